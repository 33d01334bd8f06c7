/** A selection lasts as long as what it names, and a rehearsal as long as its tube can be put in a bender. */
import type { Derived } from '../../core/derive.ts';
import { bareId, type TubeRef } from '../../core/job/reference.ts';
import { isBendable } from '../../core/rehearse/pose.ts';
import type { Selection } from '../types.ts';

export function stillThere(selection: Selection | null, derived: Derived): Selection | null {
  return selection !== null && isThere(selection, derived) ? selection : null;
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
