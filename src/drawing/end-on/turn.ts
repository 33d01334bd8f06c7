/**
 * A tube's turn before a bend as one sees it from behind, towards the die: the tube with the letter of the end behind, the leg of the
 * bend that lies level at zero (broken) and where it comes to stand (whole), the way it is turned, and the level on its bar or the
 * wheel. What is read stands over it all in words that name the instrument. The bar is held by a block on the round of the tube, clear of
 * the leg: a level laid on the leg itself would read less. Paper and screen draw these same marks. Up is up, left is left.
 */
import { toRadians, type Degrees } from '../../core/geometry/angle.ts';
import type { RotationReading } from '../../core/run/rotation-reading.ts';
import { onScale } from '../../core/words/turns.ts';
import type { Mark, Place2 } from '../types.ts';
import { around, arc, arrowhead, circle, disc, FAINT, FINE, FIRM, shape, stroke, text } from '../ink.ts';

/** mm, of all that is drawn. */
export const TURN_PICTURE = { width: 31, height: 20.2 };

const CENTRE: Place2 = { x: 15.5, y: 8.4 };
const TUBE = 2.6;
const LEG = 6.8;
const SWEEP = 7.9;
const BAR = 5.2;
/** From the tube's surface to the bar: what shows that the bar does not lie on the leg. */
const BLOCK = 2.3;
const WHEEL = 5.6;
const HEAD = 2.2;

/** With its lower left corner at the origin. */
export function turnPicture(reading: RotationReading): readonly Mark[] {
  const { turn, sense, legTo, by, reads, seenFrom } = reading;
  const side = legTo === 'left' ? Math.PI : 0;
  const turned = side - toRadians(turn) * (sense === 'anticlockwise' ? -1 : 1);
  const top = Math.PI / 2 + turned - side;
  const { width, height } = TURN_PICTURE;
  return [
    stroke([along(Math.PI, SWEEP + 2), along(0, SWEEP + 2)], { ...FAINT, dash: [2, 0.8, 0.5, 0.8] }),
    ...(by === 'wheel' ? wheel(top) : []),
    shape(leg(side), { ...FINE, dash: [1, 0.7] }, null),
    shape(leg(turned), FINE, 0.72),
    ...(by === 'level' ? bar(top) : []),
    disc(CENTRE, TUBE, null, 1),
    circle(CENTRE, TUBE, FIRM),
    text(CENTRE.x, CENTRE.y - 1.15, seenFrom, { size: 3.2, bold: true, anchor: 'middle' }),
    ...sweep(side, turn, sense),
    text(width / 2, height - 2.8, `${by === 'level' ? 'level on bar' : 'wheel'} ${onScale(reads)}°`, {
      anchor: 'middle',
      bold: true,
    }),
  ];
}

const along = (angle: number, out: number): Place2 => around(CENTRE, out, angle);

/** The leg stands behind the tube's end: its sides begin at the tube's. */
function leg(angle: number): Place2[] {
  const across = angle + Math.PI / 2;
  const side = (out: number, half: number): Place2 => around(along(angle, out), half, across);
  return [side(0, TUBE), side(LEG, TUBE), side(LEG, -TUBE), side(0, -TUBE)];
}

/** The way from the leg before to the leg after, outside of both; half a turn goes over the top, as either way would do. */
function sweep(side: number, turn: Degrees, sense: RotationReading['sense']): Mark[] {
  if (turn === 0) return [];
  const clockwise = sense === null ? side > 1 : sense === 'clockwise';
  const way = clockwise ? -1 : 1;
  const end = side + toRadians(turn) * way;
  // The head is as long as some of the way; on a short way it stands alone.
  const head = HEAD / SWEEP;
  const line = end - Math.min(head * 0.8, toRadians(turn)) * way;
  const [from, to] = clockwise ? [line, side] : [side, line];
  return [
    ...(to - from > 0.01 ? [arc(CENTRE, SWEEP, from, to, FIRM)] : []),
    arrowhead(along(end, SWEEP), end + way * (Math.PI / 2 - head / 2), HEAD),
  ];
}

/** The way round alone, to stand before a figure. */
export function turnSign(centre: Place2, sense: 'clockwise' | 'anticlockwise'): readonly Mark[] {
  const radius = 2.2;
  const [from, to] = sense === 'clockwise' ? [-0.5, 4] : [-0.86, 3.64];
  const [end, way] = sense === 'clockwise' ? [from, -1] : [to, 1];
  return [
    arc(centre, radius, from, to, FIRM),
    arrowhead(around(centre, radius, end + way * 0.5), end + way * (Math.PI / 2 + 0.2), HEAD),
  ];
}

/** A bar square across the tube, on a block that stands on it, and the level on the bar. */
function bar(top: number): Mark[] {
  const on = (across: number, up: number): Place2 => around(along(top, TUBE + up), across, top - Math.PI / 2);
  const block = (half: number, low: number, high: number): Place2[] => [
    on(-half, low),
    on(half, low),
    on(half, high),
    on(-half, high),
  ];
  return [
    shape(block(0.9, -0.4, BLOCK), null, 0),
    shape(block(BAR, BLOCK, BLOCK + 0.7), null, 0),
    shape(block(2.6, BLOCK + 0.7, BLOCK + 2.5), FINE, 1),
    disc(on(0, BLOCK + 1.6), 0.45, null, 0),
  ];
}

/** Divisions every 15 degrees turn with the tube; the pointer over them stands. */
function wheel(top: number): Mark[] {
  return [
    disc(CENTRE, WHEEL, FINE, 1),
    ...Array.from({ length: 24 }, (_, i) => {
      const angle = top + (i * Math.PI) / 12;
      return stroke([along(angle, WHEEL - (i === 0 ? 2.4 : 1)), along(angle, WHEEL)], i === 0 ? FIRM : FINE);
    }),
    arrowhead(along(Math.PI / 2, WHEEL + 0.1), -Math.PI / 2, 2.2),
  ];
}
