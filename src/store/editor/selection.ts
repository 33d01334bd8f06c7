/** A selection lasts as long as what it names, and a rehearsal as long as its tube can be put in a bender. */
import type { Derived } from '../../core/derive.ts';
import { bareId, isPrimed, pieceId, pieceNamed, primed, type TubeRef } from '../../core/job/reference.ts';
import { isBendable } from '../../core/rehearse/bendable.ts';
import type { Selection } from '../types.ts';

/** A bar that is cut in pieces hands the selection on to its first, and a piece to the bar that it is joined to again. */
export function stillThere(selection: Selection | null, derived: Derived): Selection | null {
  if (selection === null || isThere(selection, derived)) return selection;
  const tube = selection.kind === 'tube' ? madeOtherwise(selection.id, derived) : undefined;
  return tube === undefined ? null : { kind: 'tube', id: tube };
}

function madeOtherwise(id: TubeRef, { byId }: Derived): TubeRef | undefined {
  const member = pieceNamed(id)?.member;
  const bar = member !== undefined && isPrimed(id) ? primed(member) : member;
  return [pieceId(id, 1), bar].find((tube) => tube !== undefined && byId.has(tube));
}

function isThere({ kind, id }: Selection, { job, nodes, byId }: Derived): boolean {
  switch (kind) {
    case 'tube':
      return byId.has(id);
    case 'node':
      return nodes.has(id);
    case 'point':
      return job.points.some((point) => point.id === bareId(id));
    case 'envelope':
      return job.envelopes.some((envelope) => envelope.id === id);
  }
}

export function stillRehearsed(rehearsing: TubeRef | null, { byId }: Derived): TubeRef | null {
  const tube = rehearsing === null ? undefined : byId.get(rehearsing);
  return tube !== undefined && isBendable(tube) ? rehearsing : null;
}
