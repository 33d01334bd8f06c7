/**
 * The shop floor at z = 0, as it is chalked before measuring: a light grid, the car's centreline (y = 0) and the cross
 * line through the datum (x = 0), and the axes named at their ends.
 */
import { boxRound } from '../../core/geometry/box-tree.ts';
import { ORIGIN, type Vec3 } from '../../core/geometry/vector.ts';
import type { LengthUnit } from '../../core/units/length.ts';
import type { Stroke } from './Strokes.tsx';

/** In steps of the grid, counted from the datum. */
export interface FloorSize {
  /** mm. */
  readonly step: number;
  readonly back: number;
  readonly front: number;
  /** To either side. */
  readonly side: number;
}

export interface Floor {
  readonly size: FloorSize;
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
export function floorUnder(places: readonly Vec3[], unit: LengthUnit): FloorSize {
  const step = gridStep(unit);
  const { low, high } = boxRound([ORIGIN, ...places], 0);
  const down = (mm: number): number => Math.floor(mm / step) - 1;
  const up = (mm: number): number => Math.ceil(mm / step) + 1;
  return { step, back: down(low[0]), front: up(high[0]), side: Math.max(-down(low[1]), up(high[1])) };
}

export const sameSize = (a: FloorSize, b: FloorSize): boolean =>
  a.step === b.step && a.back === b.back && a.front === b.front && a.side === b.side;

export function layFloor(size: FloorSize): Floor {
  const { step, back, front, side: half } = size;
  const grid: Stroke[] = [];
  for (let i = back; i <= front; i += 1)
    grid.push([
      [i * step, -half * step, 0],
      [i * step, half * step, 0],
    ]);
  for (let i = -half; i <= half; i += 1)
    grid.push([
      [back * step, i * step, 0],
      [front * step, i * step, 0],
    ]);
  const forward: Vec3 = [(front + 0.6) * step, 0, 0];
  const left: Vec3 = [0, (half + 0.4) * step, 0];
  const up: Vec3 = [0, 0, 1.2 * step];
  const head = step * 0.16;
  return {
    size,
    grid,
    datum: [
      [[back * step, 0, 0], forward],
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
