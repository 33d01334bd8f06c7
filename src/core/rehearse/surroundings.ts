/**
 * What a tube can touch at its bender, and the tube itself in stretches, each with bounds: most pairs are told apart
 * by these alone. Worked out once for all the bends of a tube.
 */
import type { Path } from '../geometry/path.ts';
import type { Vec3 } from '../geometry/vector.ts';
import { dieCentre, machineOf, roomOf, sideOf } from './machine.ts';
import type { BendableTube } from './bendable.ts';
import { stretchesOf, type Stretch } from './stretch.ts';
import type { Solid } from './types.ts';

/** mm. What comes as near as this counts as touched: a made tube is no truer. */
export const TOUCH = 0.1;
/**
 * What can be touched, with the upright slice of space that it stays in: its heights, and how far from the die's axis.
 */
export interface Obstruction extends Extent {
  readonly solid: Solid;
}

/** Bounds in bender axes: along x and y, of height, and of the distance from the die's axis. */
export interface Extent {
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
  readonly low: number;
  readonly high: number;
  readonly near: number;
  readonly far: number;
}

/** All that is the same for every bend of a tube. */
export interface Surroundings {
  readonly obstructions: readonly Obstruction[];
  readonly radius: number;
  readonly side: 1 | -1;
  /** Where the die's axis is; it is at x = 0. */
  readonly axisY: number;
  readonly plane: number;
  readonly tubeRadius: number;
  /** Places of the tube nearer to one another along it than this cannot touch: no bend is tight enough. mm. */
  readonly looseLength: number;
  /** As near as this along it they are one piece of tube. mm. */
  readonly nextLength: number;
}

export interface Side {
  readonly stretches: readonly (Stretch & Extent)[];
  /** Pieces that lie in the tools' grip: the straight next to the bend. */
  readonly held: number;
}

/** Machine, room and the lengths along the tube within which it cannot touch itself. */
export function surroundingsOf({ die, section, bends }: BendableTube): Surroundings {
  const { bender } = die;
  const axisY = dieCentre(die, bender)[1];
  // Of all curves with at most this curvature a circle brings two of its places the nearest together (Schur's theorem).
  const least = Math.min(die.centrelineRadius, ...bends.map((bend) => bend.radius));
  const neighbour = 2 * least * Math.asin(Math.min(1, (section.outerDiameter + 2 * TOUCH) / (2 * least)));
  const solids = [...machineOf(die, section), ...roomOf(bender)];
  return {
    obstructions: solids.map((solid) => ({ solid, ...extentOfSolid(solid, axisY) })),
    radius: die.centrelineRadius,
    side: sideOf(bender),
    axisY,
    plane: bender.planeHeight,
    tubeRadius: section.outerDiameter / 2,
    looseLength: 2 * Math.PI * least - neighbour,
    nextLength: neighbour,
  };
}

/** One side of the bend, as layFront and layRear lay it. */
export function sideAlong(path: Path, { axisY }: Surroundings): Side {
  const stretches = stretchesOf(path).map((stretch): Stretch & Extent => {
    const { from, to, sag } = stretch;
    return Object.assign(stretch, extent(from, to, sag, axisY), { near: nearAxis(from, to, axisY) - sag });
  });
  return { stretches, held: path.pieces[0]!.kind === 'line' ? 1 : 0 };
}

/** Bounds of what lies within `margin` of a straight from one place to another. */
function extent(from: Vec3, to: Vec3, margin: number, axisY: number): Extent {
  const low = (k: 0 | 1 | 2): number => Math.min(from[k], to[k]) - margin;
  const high = (k: 0 | 1 | 2): number => Math.max(from[k], to[k]) + margin;
  const far = Math.max(Math.hypot(from[0], from[1] - axisY), Math.hypot(to[0], to[1] - axisY)) + margin;
  return { x0: low(0), x1: high(0), y0: low(1), y1: high(1), low: low(2), high: high(2), near: 0, far };
}

/** How near to the die's axis, seen from above, a straight comes. */
function nearAxis([x, y]: Vec3, [toX, toY]: Vec3, axisY: number): number {
  const [u, v] = [toX - x, toY - y];
  const square = u * u + v * v;
  const share = square > 0 ? Math.min(Math.max(-(x * u + (y - axisY) * v) / square, 0), 1) : 0;
  return Math.hypot(x + share * u, y - axisY + share * v);
}

/** How near to the die's axis and how far from it a rectangle reaches, seen from above. */
export function ringOf(x0: number, x1: number, y0: number, y1: number, axisY: number): { near: number; far: number } {
  const far = Math.hypot(Math.max(Math.abs(x0), Math.abs(x1)), Math.max(Math.abs(y0 - axisY), Math.abs(y1 - axisY)));
  return { near: Math.hypot(Math.max(x0, -x1, 0), Math.max(y0 - axisY, axisY - y1, 0)), far };
}

function extentOfSolid({ shape, turning }: Solid, axisY: number): Extent {
  if (shape.kind === 'plane') {
    const all = { x0: -Infinity, x1: Infinity, y0: -Infinity, y1: Infinity, low: -Infinity, high: Infinity };
    return { ...all, near: 0, far: Infinity };
  }
  const half =
    shape.kind === 'box'
      ? ([0, 1, 2] as const).map((k) => shape.axes.reduce((sum, way, i) => sum + Math.abs(way[k]) * shape.half[i]!, 0))
      : [shape.radius, shape.radius, shape.halfHeight];
  const [x, y, z] = shape.centre;
  const [low, high] = [z - half[2]!, z + half[2]!];
  const ring = ringOf(x - half[0]!, x + half[0]!, y - half[1]!, y + half[1]!, axisY);
  if (turning) return { x0: -ring.far, x1: ring.far, y0: axisY - ring.far, y1: axisY + ring.far, low, high, ...ring };
  return { x0: x - half[0]!, x1: x + half[0]!, y0: y - half[1]!, y1: y + half[1]!, low, high, ...ring };
}
