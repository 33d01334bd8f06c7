/** The nodes that stand on a tube between its ends: corners and nodes of its own path, and those where other tubes meet it. */
import { nearestOnPath } from '../geometry/path.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import { isPrimed, primed, type NodeRef } from '../job/reference.ts';
import type { Bar, Frame, SolvedTube } from '../solve/types.ts';

export interface NodeAlong {
  readonly node: NodeRef;
  /** Developed length from end A's node, mm; at a corner that is bent, that of the bend's middle, which is nearest to it. */
  readonly at: number;
}

/** From end A to end B; a place once, though several nodes or their mirror images are there. */
export function nodesAlong(tube: SolvedTube, { nodes, bars }: Pick<Frame, 'nodes' | 'bars'>): readonly NodeAlong[] {
  const own = new Set(pathOf(tube));
  const others = new Set([...bars.values()].flatMap((other) => (other.id === tube.bar ? [] : pathOf(other))));
  const { path } = bars.get(tube.bar)!;
  const found = [...own, ...others].flatMap((node): NodeAlong[] => {
    const nearest = nearestOnPath(path, nodes.get(node)!);
    const { distance } = nearest;
    const at = nearest.at - (tube.piece?.from ?? 0);
    const between = at > ROUNDING && at < tube.path.length - ROUNDING;
    return between && (own.has(node) || distance <= ROUNDING) ? [{ node, at }] : [];
  });
  return found.toSorted((a, b) => a.at - b.at).filter(({ at }, i, row) => i === 0 || at - row[i - 1]!.at > ROUNDING);
}

const pathOf = ({ id, member }: Bar): readonly NodeRef[] => (isPrimed(id) ? member.path.map(primed) : member.path);
