/**
 * The cut end of a tube as one looks at it, towards the tube: the line that marks are counted from on top, the way from it to the
 * deep-bite side of each cut, and the mark there. A bent tube runs on upwards behind its end, since its line is on the inside of the
 * bend. Paper and screen draw these same marks.
 */
import { toDegrees, toRadians } from '../../core/geometry/angle.ts';
import type { EndMark } from '../../core/shop/cope-mark.ts';
import type { Mark, Place2 } from '../drawing/types.ts';
import { around, arc, arrowhead, disc, FINE, FIRM, HAIR, shape, stroke, text } from '../sheets/ink.ts';

/** mm, of all that is drawn. */
export const END_PICTURE = { width: 22, height: 21.4 };

const CENTRE: Place2 = { x: 11, y: 9.6 };
const TUBE = 5.6;
const WALL = 0.9;
const TOP = Math.PI / 2;
const NAME = 3.1;
/** A mark this near to the line has its wedge and number where the line's name would stand. */
const NEAR = toRadians(45);

/** With its lower left corner at the origin. `bent`: the tube has a bend, on whose inside the line runs. */
export function endPicture(marks: readonly EndMark[], bent: boolean): readonly Mark[] {
  const isTaken = marks.some(({ turn }) => Math.abs(turn) < NEAR);
  return [
    ...(bent ? legBehind() : []),
    disc(CENTRE, TUBE, FIRM, 0.8),
    disc(CENTRE, TUBE - WALL, FINE, 1),
    ...marks.flatMap((mark, i) => way(mark, i, marks.length)),
    stroke([along(TOP, TUBE - 1.8), along(TOP, TUBE + 1.6)], { width: 0.7, grey: 0 }),
    ...marks.flatMap((mark, i) => spot(mark, marks.length > 1 ? String(i + 1) : '')),
    text(CENTRE.x, isTaken ? END_PICTURE.height - 2.3 : CENTRE.y + TUBE + 2, 'line', {
      size: NAME,
      anchor: 'middle',
    }),
  ];
}

const along = (angle: number, out: number): Place2 => around(CENTRE, out, angle);

/** It bends away upwards: to the side that the line is on. */
function legBehind(): Mark[] {
  const side = (x: number): Mark =>
    stroke(
      [
        { x: CENTRE.x + x, y: CENTRE.y },
        { x: CENTRE.x + x, y: END_PICTURE.height },
      ],
      { ...HAIR, dash: [1, 0.6] },
    );
  return [side(-TUBE), side(TUBE)];
}

/** From the line to the mark, each cut's inside the one before. */
function way({ turn }: EndMark, index: number, count: number): Mark[] {
  if (Math.abs(toDegrees(turn)) < 0.05) return [];
  const radius = Math.max(1.2, TUBE - WALL - 0.8 - index * (count > 3 ? 0.6 : 1.1));
  const way = turn > 0 ? -1 : 1;
  const end = TOP - turn;
  const head = Math.min(1.5, radius);
  const lean = head / radius;
  const line = end - Math.min(lean * 0.8, Math.abs(turn)) * way;
  const [from, to] = turn > 0 ? [line, TOP] : [TOP, line];
  return [
    ...(to - from > 0.01 ? [arc(CENTRE, radius, from, to, FINE)] : []),
    arrowhead(along(end, radius), end + way * (TOP - lean / 2), head),
  ];
}

/** A wedge on the outside that points in, with its cut's number where there are several. A square cut has two. */
function spot({ turn, both }: EndMark, number: string): Mark[] {
  const angle = TOP - turn;
  const wedge = (at: number): Mark => {
    const base = along(at, TUBE + 2.2);
    return shape([along(at, TUBE - 0.6), around(base, 1.3, at + TOP), around(base, 1.3, at - TOP)], null, 0);
  };
  const name = along(angle, TUBE + 3.5);
  return [
    wedge(angle),
    ...(both ? [wedge(angle + Math.PI)] : []),
    ...(number === '' ? [] : [text(name.x, name.y - 1.1, number, { size: NAME, anchor: 'middle', bold: true })]),
  ];
}
