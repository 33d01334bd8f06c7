/** What of another state of a job comes along with what is taken over. */
import { LISTS } from '../job/kinds.ts';
import { bareId, pieceNamed } from '../job/reference.ts';
import { referencesOf } from '../job/references.ts';
import type { AnyRecord, List } from '../job/types.ts';
import type { Difference } from './differences.ts';

/**
 * What comes along with these, though nobody chose it: all that they refer to, and that refers to, which is only there.
 *
 * @param found all differences of two jobs by one set of ids
 */
export function alongWith(found: readonly Difference[], asked: readonly Difference[]): readonly Difference[] {
  const byId = new Map(found.map((one) => [one.id, one]));
  const known = new Set(asked.map(({ id }) => id));
  const waiting = [...asked];
  for (const one of waiting) {
    if (one.kind === 'only-here' || !isList(one.on)) continue;
    for (const { list, to } of referencesOf(one.on, one.there as AnyRecord)) {
      for (const id of idsNamed(to)) {
        const lacking = byId.get(`${list}/${id}`);
        if (lacking?.kind !== 'only-there' || known.has(lacking.id)) continue;
        known.add(lacking.id);
        waiting.push(lacking);
      }
    }
  }
  return waiting.slice(asked.length);
}

const isList = (on: Difference['on']): on is List => (LISTS as readonly string[]).includes(on);

/** The ids that a reference may stand for: of the record itself, or of the bar that it names a piece of. */
export const idsNamed = (reference: string): readonly string[] => {
  const piece = pieceNamed(reference);
  return piece === null ? [bareId(reference)] : [bareId(reference), piece.member];
};
