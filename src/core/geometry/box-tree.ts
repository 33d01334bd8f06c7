/**
 * A static tree of axis-aligned boxes: which boxes hold a point, or are met by a line? Built in n log n by halving at the
 * median along the longest side; a query looks only into boxes that it accepts. Keeps "who meets whom", and "what is seen
 * there", from being every pair.
 */
import type { Vec3 } from './vector.ts';

export interface Box {
  readonly low: Vec3;
  readonly high: Vec3;
}

type Branch = Box & ({ readonly items: Uint32Array } | { readonly halves: readonly [Branch, Branch] });

export type BoxTree = Branch | null;

/** Boxes looked through one by one: below this, halving costs more than it saves. */
const LEAF = 16;

/** The tree of boxes by their place in the list; null for none. n log n. */
export function buildBoxTree(boxes: readonly Box[]): BoxTree {
  return boxes.length === 0 ? null : branchOf(boxes, middlesOf(boxes), Uint32Array.from(boxes.keys()));
}

/**
 * Calls `visit` with the index of every box that is accepted. A box round others must be accepted if one of them is;
 * what is accepted may become less on the way, as better is found.
 */
export function visitBoxes(
  tree: BoxTree,
  boxes: readonly Box[],
  accepts: (box: Box) => boolean,
  visit: (index: number) => void,
): void {
  if (tree === null || !accepts(tree)) return;
  if ('halves' in tree) {
    visitBoxes(tree.halves[0], boxes, accepts, visit);
    visitBoxes(tree.halves[1], boxes, accepts, visit);
  } else {
    for (const index of tree.items) if (accepts(boxes[index]!)) visit(index);
  }
}

/** Calls `visit` with the index of every box that holds p. */
export const visitBoxesAt = (tree: BoxTree, boxes: readonly Box[], p: Vec3, visit: (index: number) => void): void =>
  visitBoxes(tree, boxes, (box) => holds(box, p), visit);

/** The least box round the points, widened by `margin` on every side. */
export function boxRound(points: readonly Vec3[], margin: number): Box {
  const low: [number, number, number] = [Infinity, Infinity, Infinity];
  const high: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (const p of points) {
    for (let axis = 0; axis < 3; axis++) {
      low[axis] = Math.min(low[axis]!, p[axis]! - margin);
      high[axis] = Math.max(high[axis]!, p[axis]! + margin);
    }
  }
  return { low, high };
}

const holds = (box: Box, p: Vec3): boolean =>
  p[0] >= box.low[0] &&
  p[0] <= box.high[0] &&
  p[1] >= box.low[1] &&
  p[1] <= box.high[1] &&
  p[2] >= box.low[2] &&
  p[2] <= box.high[2];

function union(boxes: readonly Box[], items: Uint32Array): Box {
  const low: [number, number, number] = [...boxes[items[0]!]!.low];
  const high: [number, number, number] = [...boxes[items[0]!]!.high];
  for (const index of items) {
    const box = boxes[index]!;
    for (let axis = 0; axis < 3; axis++) {
      if (box.low[axis]! < low[axis]!) low[axis] = box.low[axis]!;
      if (box.high[axis]! > high[axis]!) high[axis] = box.high[axis]!;
    }
  }
  return { low, high };
}

/** Twice the middle of each box, x, y, z after one another. */
function middlesOf(boxes: readonly Box[]): Float64Array {
  const middles = new Float64Array(3 * boxes.length);
  boxes.forEach(({ low, high }, index) => {
    for (let axis = 0; axis < 3; axis++) middles[3 * index + axis] = low[axis]! + high[axis]!;
  });
  return middles;
}

/** `items` is a part of one list, which is put in order in place. */
function branchOf(boxes: readonly Box[], middles: Float64Array, items: Uint32Array): Branch {
  const round = union(boxes, items);
  if (items.length <= LEAF) return { ...round, items };
  const sides = [round.high[0] - round.low[0], round.high[1] - round.low[1], round.high[2] - round.low[2]];
  const axis = sides.indexOf(Math.max(...sides));
  items.sort((a, b) => middles[3 * a + axis]! - middles[3 * b + axis]!);
  const half = items.length >> 1;
  return {
    ...round,
    halves: [branchOf(boxes, middles, items.subarray(0, half)), branchOf(boxes, middles, items.subarray(half))],
  };
}
