/** The places of a bar that a person would name when a bend is to come there or the bar is to be split: its straights, and the nodes on them. */
import { nearestOnPath } from '../geometry/path.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import { isPrimed, primed, type NodeRef, type TubeRef } from '../job/reference.ts';
import { tubesOfBar } from '../solve/bar-tubes.ts';
import type { Bar, Frame } from '../solve/types.ts';

export interface NamedPlace {
  /** mm along the centreline from end A's node. */
  readonly at: number;
  /** The node that stands there; null for the middle of a straight. */
  readonly node: NodeRef | null;
  /** 1 = from end A. */
  readonly straight: number;
  /** The bar that cuts it there, of one in pieces. */
  readonly by: TubeRef | null;
}

/** Where a bar in pieces is cut, from end A; the middle of the longest straight, then of the others from end A; then the nodes of the frame's tubes that lie on a straight. */
export function namedPlaces({ bars, nodes, byId }: Frame, bar: Bar): readonly NamedPlace[] {
  const ends = [...bar.bends.map(({ start }) => start), bar.developedLength];
  const starts = [0, ...bar.bends.map(({ end }) => end)];
  const middles = starts
    .map((start, i) => ({ at: (start + ends[i]!) / 2, straight: i + 1, length: ends[i]! - start }))
    .filter(({ length }) => length > ROUNDING);
  const longest = middles.toSorted((a, b) => b.length - a.length)[0];
  const found = new Map<NodeRef, NamedPlace>();
  for (const { id, member } of bars.values()) {
    for (const to of member.path) {
      const node = isPrimed(id) ? primed(to) : to;
      const { at, distance } = nearestOnPath(bar.path, nodes.get(node)!);
      const straight = starts.findIndex((start, i) => at >= start - ROUNDING && at <= ends[i]! + ROUNDING);
      if (distance <= ROUNDING && straight !== -1 && at > ROUNDING && at < bar.developedLength - ROUNDING) {
        found.set(node, { at, node, straight: straight + 1, by: null });
      }
    }
  }
  const onIt = [...found.values()].toSorted((a, b) => a.at - b.at);
  const cuts = tubesOfBar(byId, bar.id).flatMap(({ piece, ends: [{ spec }] }): NamedPlace[] => {
    if (piece === null || piece.number === 1 || spec.fit !== 'cope') return [];
    const straight = starts.findLastIndex((start) => start <= piece.from + ROUNDING);
    return [{ at: piece.from, node: null, straight: straight + 1, by: spec.against[0]! }];
  });
  const between = middles
    .toSorted((a, b) => Number(b === longest) - Number(a === longest))
    .map(({ at, straight }) => ({ at, node: null, straight, by: null }));
  return [...cuts, ...between, ...onIt.filter(({ at }, i) => i === 0 || at - onIt[i - 1]!.at > ROUNDING)];
}
