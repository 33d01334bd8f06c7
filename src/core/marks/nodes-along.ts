/** The nodes that stand on a tube between its ends: corners and nodes of its own path, and those where other tubes meet it. */
import { nearestOnPath } from '../geometry/path.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import { primed, type NodeRef } from '../job/reference.ts';
import type { Frame, SolvedTube } from '../solve/types.ts';

export interface NodeAlong {
  readonly node: NodeRef;
  /** Developed length from end A's node, mm; at a corner that is bent, that of the bend's middle, which is nearest to it. */
  readonly at: number;
}

/** From end A to end B; a place once, though several nodes or their mirror images are there. */
export function nodesAlong(tube: SolvedTube, { nodes, tubes }: Pick<Frame, 'nodes' | 'tubes'>): readonly NodeAlong[] {
  const own = new Set(pathOf(tube));
  const others = new Set(tubes.flatMap((other) => (other === tube ? [] : pathOf(other))));
  const found = [...own, ...others].flatMap((node): NodeAlong[] => {
    const { at, distance } = nearestOnPath(tube.path, nodes.get(node)!);
    const between = at > ROUNDING && at < tube.path.length - ROUNDING;
    return between && (own.has(node) || distance <= ROUNDING) ? [{ node, at }] : [];
  });
  return found.toSorted((a, b) => a.at - b.at).filter(({ at }, i, row) => i === 0 || at - row[i - 1]!.at > ROUNDING);
}

const pathOf = ({ member, twinOf }: SolvedTube): readonly NodeRef[] =>
  twinOf === null ? member.path : member.path.map(primed);
