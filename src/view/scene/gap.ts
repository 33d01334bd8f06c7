/** The gaps that the bay draws: the shortest of each envelope as a dimension, those of what is selected as lines. */
import { interpolate, type Vec3 } from '../../core/geometry/vector.ts';
import type { Derived } from '../../core/derive.ts';
import { measureTrim, type TrimGap, type TrimGaps } from '../../core/gaps/measure-trim.ts';
import { trimPlaces } from '../../core/gaps/trim-places.ts';
import { bareId, type EnvelopeId } from '../../core/job/reference.ts';
import type { PointedOut, Selection, Station } from '../../store/types.ts';
import type { Stroke } from './Strokes.tsx';

export interface Gap {
  readonly envelope: EnvelopeId;
  /** mm from the box to the tube's surface, negative inside. */
  readonly distance: number;
  readonly ok: boolean;
  readonly onTube: Vec3;
  readonly onEnvelope: Vec3;
  readonly middle: Vec3;
}

export function shortestGaps({ clearances }: Pick<Derived, 'clearances'>): readonly Gap[] {
  const shortest = new Map<EnvelopeId, Derived['clearances'][number]>();
  for (const clearance of clearances) {
    const known = shortest.get(clearance.envelope);
    if (known === undefined || clearance.distance < known.distance) shortest.set(clearance.envelope, clearance);
  }
  return [...shortest.values()].map(({ envelope, distance, ok, at, onEnvelope }) => ({
    envelope,
    distance,
    ok,
    onTube: at,
    onEnvelope,
    middle: interpolate(at, onEnvelope, 0.5),
  }));
}

/** What is pointed out; else in the Checks those of the tube to others and to trim, in the Survey those of the point to the tubes that are nearest. */
export function gapLines(
  derived: Derived,
  station: Station,
  selection: Selection | null,
  pointedOut: PointedOut | null,
): readonly Stroke[] {
  if (pointedOut !== null) return pointedOut.line === null ? NONE : [pointedOut.line];
  if (station === 'checks' && selection?.kind === 'tube') {
    const { id } = selection;
    const toTubes = derived.gaps.filter(({ tubes }) => tubes.includes(id)).map(({ on }) => on);
    return [...toTubes, ...linesOf(derived.trimGaps, (gap) => gap.tube === id)];
  }
  if (station !== 'survey' || selection?.kind !== 'point') return NONE;
  const point = bareId(selection.id);
  return linesOf(
    measureTrim(
      derived,
      trimPlaces(derived, ({ id }) => id === point),
    ),
    () => true,
  );
}

const NONE: readonly Stroke[] = [];

const linesOf = (all: readonly TrimGaps[], isMeant: (gap: TrimGap) => boolean): readonly Stroke[] =>
  all.flatMap(({ gaps }) => gaps.filter(isMeant).map(({ at, onTrim }): Stroke => [at, onTrim]));
