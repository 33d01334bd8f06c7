/**
 * A static tree of axis-aligned boxes: which boxes hold a point? Built in n log n by halving at the median along the
 * longest side; a query looks only into boxes that hold the point. Keeps "who meets whom" from being every pair.
 */
import type { Vec3 } from './vector.ts';

export interface Box {
  readonly low: Vec3;
  readonly high: Vec3;
}

type Branch = Box & ({ readonly items: readonly number[] } | { readonly halves: readonly [Branch, Branch] });

export type BoxTree = Branch | null;

/** Boxes looked through one by one: below this, halving costs more than it saves. */
const LEAF = 16;

export function buildBoxTree(boxes: readonly Box[]): BoxTree {
  return boxes.length === 0
    ? null
    : branchOf(
        boxes,
        boxes.map((_, index) => index),
      );
}

/** Calls `visit` with the index of every box that holds p. */
export function visitBoxesAt(tree: BoxTree, boxes: readonly Box[], p: Vec3, visit: (index: number) => void): void {
  if (tree === null || !holds(tree, p)) return;
  if ('halves' in tree) {
    visitBoxesAt(tree.halves[0], boxes, p, visit);
    visitBoxesAt(tree.halves[1], boxes, p, visit);
  } else {
    for (const index of tree.items) if (holds(boxes[index]!, p)) visit(index);
  }
}

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

function union(boxes: readonly Box[], items: readonly number[]): Box {
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

function branchOf(boxes: readonly Box[], items: readonly number[]): Branch {
  const round = union(boxes, items);
  if (items.length <= LEAF) return { ...round, items };
  const sides = [round.high[0] - round.low[0], round.high[1] - round.low[1], round.high[2] - round.low[2]];
  const axis = sides.indexOf(Math.max(...sides));
  const middle = (index: number) => boxes[index]!.low[axis]! + boxes[index]!.high[axis]!;
  const sorted = items.toSorted((a, b) => middle(a) - middle(b));
  const half = sorted.length >> 1;
  return { ...round, halves: [branchOf(boxes, sorted.slice(0, half)), branchOf(boxes, sorted.slice(half))] };
}
