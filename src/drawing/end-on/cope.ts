/**
 * The cut end of a tube as one looks at it, towards the tube: the line that marks are counted from on top, the way from it to the
 * mark, and the mark there. A bent tube runs on upwards behind its end, since its line is on the inside of the
 * bend. Paper and screen draw these same marks.
 */
import type { EndMark } from '../../core/cope/end-mark.ts';
import { toDegrees, toRadians, wrapHalfTurn } from '../../core/geometry/angle.ts';
import type { Mark, Picture, Place2 } from '../types.ts';
import { around, arc, arrowhead, disc, FINE, FIRM, HAIR, shape, stroke, text } from '../ink.ts';

export const END_WIDTH = 24;
const MIDDLE = END_WIDTH / 2;
const TUBE = 6;
/** How far past its ring the leg behind is drawn. */
const LEG = 2.3;
const WALL = 0.9;
const WEDGE = 2.2;
const NAME = 3.1;
const TOP = Math.PI / 2;
/** A wedge this near to the line stands where the line's name would. */
const NEAR = toRadians(45);

/**
 * `bent`: the tube has a bend, on whose inside the line runs. `lineAt`: where round the picture the line stands, radians anticlockwise from
 * its right; on top unless the picture is turned to lie as another one beside it.
 */
export function endPicture(mark: EndMark, bent: boolean, lineAt: number = TOP): Picture {
  const reach = TUBE + WEDGE + 0.2;
  const centre: Place2 = { x: MIDDLE, y: reach };
  const isTaken = Math.abs(wrapHalfTurn(mark.turn)) < NEAR;
  return {
    width: END_WIDTH,
    height: centre.y + reach + 0.4 + NAME,
    marks: [
      ...(bent ? legBehind(centre, lineAt) : []),
      disc(centre, TUBE, FIRM, 0.8),
      disc(centre, TUBE - WALL, FINE, 1),
      ...way(centre, mark, lineAt),
      stroke([around(centre, TUBE - 1.8, lineAt), around(centre, TUBE + 1.6, lineAt)], { width: 0.7, grey: 0 }),
      ...wedges(centre, mark, lineAt),
      lineName(centre, lineAt, bent ? 'inside' : 'scribed', isTaken ? reach + 0.4 : TUBE + 2.2),
    ],
  };
}

/** Beside the line, where that is not under the ring, else over it; `out`: how far from the middle, mm. */
function lineName(centre: Place2, lineAt: number, name: string, out: number): Mark {
  const [side, up] = [Math.cos(lineAt), Math.sin(lineAt)];
  if (up > 0.7) return text(centre.x, centre.y + out, name, { size: NAME, anchor: 'middle' });
  // There is no room for more than that beside the ring.
  if (Math.abs(side) < 0.5)
    return text(side < 0 ? 0.5 : END_WIDTH - 0.5, 0.3, 'line', { size: NAME, anchor: side < 0 ? 'start' : 'end' });
  const y = Math.max(centre.y + up * (TUBE + 1.6) + 0.8, 0.3);
  return text(side < 0 ? 0.3 : END_WIDTH - 0.3, y, 'line', { size: NAME, anchor: side < 0 ? 'start' : 'end' });
}

/** It bends away to the side that the line is on. */
function legBehind(centre: Place2, lineAt: number): Mark[] {
  const side = (from: number): Mark => {
    const start = around(centre, from, lineAt - TOP);
    return stroke([start, around(start, TUBE + LEG, lineAt)], { ...HAIR, dash: [1, 0.6] });
  };
  return [side(-TUBE), side(TUBE)];
}

/** From the line to the mark. */
function way(centre: Place2, { turn }: EndMark, lineAt: number): Mark[] {
  if (Math.abs(toDegrees(turn)) < 0.05) return [];
  const radius = TUBE - WALL - 0.9;
  const sense = turn > 0 ? -1 : 1;
  const end = lineAt - turn;
  const head = Math.min(1.5, radius);
  const lean = head / radius;
  const line = end - Math.min(lean * 0.8, Math.abs(turn)) * sense;
  const [from, to] = turn > 0 ? [line, lineAt] : [lineAt, line];
  return [
    ...(to - from > 0.01 ? [arc(centre, radius, from, to, FINE)] : []),
    arrowhead(around(centre, radius, end), end + sense * (TOP - lean / 2), head),
  ];
}

/** A wedge on the outside that points in. A square cut has two. */
function wedges(centre: Place2, { turn, both }: EndMark, lineAt: number): Mark[] {
  const wedge = (at: number): Mark => {
    const base = around(centre, TUBE + WEDGE, at);
    return shape([around(centre, TUBE - 0.6, at), around(base, 1.3, at + TOP), around(base, 1.3, at - TOP)], null, 0);
  };
  return [wedge(lineAt - turn), ...(both ? [wedge(lineAt - turn + Math.PI)] : [])];
}
