/**
 * The shop floor at z = 0, as it is chalked before measuring: a light grid, the car's centreline (y = 0) and the cross
 * line through the datum (x = 0), and the axes told in words at their ends.
 */
import type { Vec3 } from '../../core/geometry/vector.ts';
import type { LengthUnit } from '../../core/job/types.ts';
import type { Stroke } from './Strokes.tsx';

export interface Floor {
  readonly grid: readonly Stroke[];
  readonly datum: readonly Stroke[];
  /** Ends of the datum lines. */
  readonly forward: Vec3;
  readonly left: Vec3;
  readonly up: Vec3;
}

/** A foot, or 250 mm. */
const gridStep = (unit: LengthUnit): number => (unit === 'in' ? 304.8 : 250);

/** Covers the places with a step to spare on every side, and the datum. */
export function layFloor(places: readonly Vec3[], unit: LengthUnit): Floor {
  const step = gridStep(unit);
  const range = (axis: 0 | 1): { least: number; greatest: number } => {
    const along = places.map((place) => place[axis]);
    return {
      least: Math.floor(Math.min(0, ...along) / step) - 1,
      greatest: Math.ceil(Math.max(0, ...along) / step) + 1,
    };
  };
  const x = range(0);
  const side = range(1);
  const half = Math.max(-side.least, side.greatest);
  const grid: Stroke[] = [];
  for (let i = x.least; i <= x.greatest; i += 1)
    grid.push([
      [i * step, -half * step, 0],
      [i * step, half * step, 0],
    ]);
  for (let i = -half; i <= half; i += 1)
    grid.push([
      [x.least * step, i * step, 0],
      [x.greatest * step, i * step, 0],
    ]);
  const forward: Vec3 = [(x.greatest + 0.6) * step, 0, 0];
  const left: Vec3 = [0, (half + 0.4) * step, 0];
  const up: Vec3 = [0, 0, 1.2 * step];
  const head = step * 0.16;
  return {
    grid,
    datum: [
      [[x.least * step, 0, 0], forward],
      [[forward[0] - head, head / 2, 0], forward],
      [[forward[0] - head, -head / 2, 0], forward],
      [[0, -half * step, 0], left],
      [[head / 2, left[1] - head, 0], left],
      [[-head / 2, left[1] - head, 0], left],
      [[0, 0, 0], up],
    ],
    forward,
    left,
    up,
  };
}
