/**
 * The least width of a flat outline: of all pairs of parallel lines that hold it, how near the nearest are. Turns about the plane's normal,
 * radians from its first axis, anticlockwise; lengths mm.
 *
 * The outline is given by what its hull is made of: circles in part, each for the turns at which its arc is the outermost, and points, which
 * are circles of no radius for all turns. Towards n(t) it reaches h(t) = max (c . n + r), and is h(t) + h(t + pi) wide. Between the turns
 * at which another part becomes the outermost that is the radii and d cos(t - a), d and a those of the way between two centres: it is least
 * at one of these turns, or where n runs along that way. All of these, of every two parts, are tried: closed form, in the cube of the
 * number of parts on the hull. (A polygon is least wide square to one of its edges: M. E. Houle and G. T.
 * Toussaint, Computing the width of a set, IEEE PAMI 10 (1988).)
 */
import type { Radians } from '../geometry/angle.ts';
import { ANGLE_ROUNDING, ROUNDING } from '../geometry/tolerance.ts';

/** A part of the outline. */
export interface Round {
  readonly centre: readonly [number, number];
  /** 0 of a point. */
  readonly radius: number;
  /** The arc's outward direction at its beginning, and how far it turns from there, anticlockwise; a point's turn is whole. */
  readonly from: Radians;
  readonly turn: Radians;
}

/** Of a point's, and all about. */
export const WHOLE_TURN: Radians = 2 * Math.PI;

/** The least width, and the turn of the direction that it is measured in, [0, pi). The ends of an arc are to be among the points. */
export function leastWidth(rounds: readonly Round[]): { readonly width: number; readonly turn: Radians } {
  const points = hullOf(rounds.filter(({ radius }) => radius === 0));
  const arcs = rounds.filter(({ radius }) => radius > 0);
  let best = { width: Infinity, turn: 0 };
  const look = (turn: Radians): void => {
    const width = reach(points, arcs, turn) + reach(points, arcs, turn + Math.PI);
    if (width < best.width - ROUNDING) best = { width, turn: modulo(turn, Math.PI) };
  };
  look(0);
  for (const { from, turn } of arcs) {
    look(from);
    look(from + turn);
  }
  const parts = [...points, ...arcs];
  parts.forEach((one, i) => {
    for (const other of parts.slice(i + 1)) {
      const [x, y] = [one.centre[0] - other.centre[0], one.centre[1] - other.centre[1]];
      const apart = Math.hypot(x, y);
      if (apart <= ROUNDING) continue;
      const along = Math.atan2(y, x);
      look(along);
      const share = (other.radius - one.radius) / apart;
      if (Math.abs(share) > 1) continue;
      for (const side of [1, -1]) look(along + side * Math.acos(share));
    }
  });
  return best;
}

/** How far the outline reaches towards that turn. */
function reach(points: readonly Round[], arcs: readonly Round[], turn: Radians): number {
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const towards = ({ centre, radius }: Round): number => centre[0] * c + centre[1] * s + radius;
  let most = -Infinity;
  for (const point of points) most = Math.max(most, towards(point));
  for (const arc of arcs) {
    const into = modulo(turn - arc.from, WHOLE_TURN);
    if (into <= arc.turn + ANGLE_ROUNDING || into >= WHOLE_TURN - ANGLE_ROUNDING) most = Math.max(most, towards(arc));
  }
  return most;
}

const modulo = (value: number, by: number): number => ((value % by) + by) % by;

/** Those of the points that are corners of their hull (Andrew's chains): the others are outermost nowhere. */
function hullOf(points: readonly Round[]): readonly Round[] {
  const inOrder = points.toSorted(({ centre: [a, b] }, { centre: [c, d] }) => a - c || b - d);
  return [inOrder, inOrder.toReversed()].flatMap((row) => {
    const chain: Round[] = [];
    for (const point of row) {
      while (chain.length > 1 && turnsRight(chain.at(-2)!, chain.at(-1)!, point)) chain.pop();
      chain.push(point);
    }
    return chain.slice(0, -1);
  });
}

/** Or runs on straight, at the middle one. */
const turnsRight = ({ centre: [ax, ay] }: Round, { centre: [bx, by] }: Round, { centre: [cx, cy] }: Round): boolean =>
  (bx - ax) * (cy - by) - (by - ay) * (cx - bx) <= 0;
