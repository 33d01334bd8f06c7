/** A selection lasts as long as what it names. */
import type { Derived } from '../core/derive.ts';
import { bareId } from '../core/job/reference.ts';
import type { Selection } from './types.ts';

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
