/**
 * Which words of a page stand over one another, by the places and widths that an outside reader gives. Of a letter's body what
 * ink may stand on counts: from a fifth under the line, where the tails of g and p hang, to three quarters over it, as high as
 * figures and capitals are.
 */
import type { Printed, ReadPage } from './pdf.ts';

const UNDER = 0.2;
const OVER = 0.75;
/** Letters that only touch can be read, mm. */
const TOUCH = 0.15;

export const overlapsOf = ({ texts }: ReadPage): string[] =>
  texts.flatMap((one, i) =>
    texts
      .slice(i + 1)
      .filter((other) => overOneAnother(one, other))
      .map((other) => `“${one.text}” and “${other.text}”`),
  );

type Corner = readonly [number, number];

function cornersOf({ x, y, width, size, turn }: Printed): readonly Corner[] {
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const at = (along: number, up: number): Corner => [x + along * c - up * s, y + along * s + up * c];
  return [at(0, -UNDER * size), at(width, -UNDER * size), at(width, OVER * size), at(0, OVER * size)];
}

/** Two boxes, however turned, have no line between them that is square to a side of either. */
function overOneAnother(one: Printed, other: Printed): boolean {
  const [a, b] = [cornersOf(one), cornersOf(other)];
  return [one.turn, one.turn + Math.PI / 2, other.turn, other.turn + Math.PI / 2].every((turn) => {
    const along = ([x, y]: Corner): number => x * Math.cos(turn) + y * Math.sin(turn);
    const [fromA, fromB] = [a.map(along), b.map(along)];
    return Math.min(Math.max(...fromA), Math.max(...fromB)) - Math.max(Math.min(...fromA), Math.min(...fromB)) > TOUCH;
  });
}
