/** How far an edit takes nodes, before it is made: the changed job is laid out beside the frame as it stands. */
import { distance } from '../geometry/vector.ts';
import type { Outcome } from '../job/fault.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import { isPrimed, type NodeRef } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import { layOut, layOutAsBuilt } from '../solve/lay-out.ts';
import { sequenceOf } from '../solve/sequence.ts';
import type { Frame } from '../solve/types.ts';
import { withMeasuredPoints } from '../survey/measured-points.ts';

export interface NodeMove {
  /** As the frame has it. */
  readonly node: NodeRef;
  /** mm. */
  readonly by: number;
}

/**
 * The nodes that stand elsewhere in the changed job, the farthest first; faults where that cannot be laid out. `became` has the nodes that
 * take the place of a mirror image, by that image; an image that none takes is not looked at, for it moves as its node does.
 */
export function nodeMoves(
  frame: Frame,
  changed: Job,
  became: ReadonlyMap<NodeRef, NodeRef> = new Map(),
): Outcome<readonly NodeMove[]> {
  const job = withMeasuredPoints(changed);
  const sequence = sequenceOf(job);
  if (!sequence.ok) return sequence;
  const drawn = layOut(job, sequence.value, frame.drawn);
  if (!drawn.ok) return drawn;
  const layout = layOutAsBuilt(job, sequence.value, drawn.value, frame.layout);
  if (!layout.ok) return layout;
  const moves = [...frame.nodes].flatMap(([node, before]): readonly NodeMove[] => {
    const after = layout.value.nodes.get(became.get(node) ?? node);
    if (after === undefined || (isPrimed(node) && !became.has(node))) return [];
    const by = distance(before, after);
    return by > ROUNDING ? [{ node, by }] : [];
  });
  return { ok: true, value: moves.toSorted((a, b) => b.by - a.by) };
}
