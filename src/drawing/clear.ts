/** Words that stand clear of one another: their boxes on the sheet, however turned, and the nearest place where one stands on none. */
import type { Lettering } from './lettering.ts';
import type { Place2, Words } from './types.ts';

/** Of the letter's body: how far ink may hang under the line, and stand over it (an accent on a capital). */
export const UNDER = 0.25;
const OVER = 0.95;

/** The box's corners, from the line's beginning anticlockwise. */
export function boxOf({ text, at, size, anchor, turn, bold }: Words, face: Lettering): readonly Place2[] {
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const wide = face.width(text, size, bold);
  const from = { start: 0, middle: -0.5, end: -1 }[anchor] * wide;
  const corner = (along: number, up: number): Place2 => ({
    x: at.x + along * cos - up * sin,
    y: at.y + along * sin + up * cos,
  });
  return [
    corner(from, -UNDER * size),
    corner(from + wide, -UNDER * size),
    corner(from + wide, OVER * size),
    corner(from, OVER * size),
  ];
}

/** The first of the places that stands on none of `others`; the first of all where each does. */
export const clearOf = (places: readonly Words[], others: readonly Words[], face: Lettering): Words =>
  places.find((mark) => isClear(mark, others, face)) ?? places[0]!;

/** Whether it stands on none of them. */
export function isClear(mark: Words, others: readonly Words[], face: Lettering): boolean {
  const box = boxOf(mark, face);
  return !others.some((other) => standOver(box, boxOf(other, face)));
}

/** Two boxes stand over one another where no line square to a side of either parts them. */
const standOver = (a: readonly Place2[], b: readonly Place2[]): boolean =>
  [a, b].every((box) => [box[1]!, box[3]!].every((to) => overlapAlong(a, b, to.x - box[0]!.x, to.y - box[0]!.y)));

function overlapAlong(a: readonly Place2[], b: readonly Place2[], dx: number, dy: number): boolean {
  const along = ({ x, y }: Place2): number => x * dx + y * dy;
  const [fromA, fromB] = [a.map(along), b.map(along)];
  return Math.max(...fromA) > Math.min(...fromB) && Math.max(...fromB) > Math.min(...fromA);
}
