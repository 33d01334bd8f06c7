/** How near the tubes come to each point and line, for as long as the Survey is shown: an edit measures anew what it changed. */
import { useMemo, useRef } from 'react';
import { measureTrim, type TrimBefore, type TrimGaps } from '../../core/gaps/measure-trim.ts';
import { trimPlaces, type Trim } from '../../core/gaps/trim-places.ts';
import { bareId } from '../../core/job/reference.ts';
import { useDocument } from '../../store/page.ts';

export type TrimOf = (kind: Trim['kind'], id: string) => readonly TrimGaps[];

/** Of a point, or a line: its own gaps, and those of its mirror image where it has one. */
export function useTrim(): TrimOf {
  const derived = useDocument((state) => state.derived);
  const last = useRef<TrimBefore>(undefined);
  return useMemo(() => {
    const trimGaps = measureTrim(derived, trimPlaces(derived), last.current ?? derived);
    last.current = { byId: derived.byId, trimGaps };
    const byPlace = new Map<string, TrimGaps[]>();
    for (const each of trimGaps) {
      const key = `${each.trim.kind} ${bareId(each.trim.id)}`;
      const known = byPlace.get(key);
      if (known === undefined) byPlace.set(key, [each]);
      else known.push(each);
    }
    return (kind, id) => byPlace.get(`${kind} ${id}`) ?? [];
  }, [derived]);
}

/** mm: the least of all; null where nothing comes near. */
export const leastOf = (all: readonly TrimGaps[]): number | null => {
  const distances = all.flatMap(({ gaps }) => gaps.map(({ distance }) => distance));
  return distances.length === 0 ? null : Math.min(...distances);
};
