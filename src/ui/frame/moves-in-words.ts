/** How far an edit takes nodes, before it is made, in words; or why it is not made. */
import type { Derived } from '../../core/derive.ts';
import type { Fault } from '../../core/job/fault.ts';
import type { NodeRef } from '../../core/job/reference.ts';
import type { Job } from '../../core/job/types.ts';
import { nodeMoves } from '../../core/shape/node-moves.ts';
import { nodeName } from '../../core/solve/names.ts';
import { comparedLength } from '../../core/words/lengths.ts';
import { listed } from '../../core/words/lists.ts';

/** Nodes that are named with what they move by; the others are counted. */
const NAMED = 3;

/** "Moves Leg foot 3.9 mm, Leg at the cowl 3.9 mm and 5 others no further." */
export function movesInWords(derived: Derived, changed: Job, became?: ReadonlyMap<NodeRef, NodeRef>): string {
  const moves = nodeMoves(derived, changed, became);
  if (!moves.ok) return `${whyOf(moves.faults)}.`;
  if (moves.value.length === 0) return 'No node moves.';
  const named = moves.value
    .slice(0, NAMED)
    .map(({ node, by }) => `${nodeName(derived.job, node)} ${comparedLength(by, derived.job.lengthUnit)}`);
  const more = moves.value.length - named.length;
  return `Moves ${listed(more > 0 ? [...named, `${more} others no further`] : named)}.`;
}

/** Why an edit is refused. */
export const whyOf = (faults: readonly Fault[]): string => faults.map(({ message }) => message).join('; ');
