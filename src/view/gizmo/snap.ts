/** Rounding a dragged value to something a tape can measure, or to a place that is already there. */
import type { LengthUnit } from '../../core/units/length.ts';

/** 1/8 in or 1 mm; fine 1/32 in or 0.1 mm. */
export const stepOf = (unit: LengthUnit, fine: boolean): number =>
  unit === 'in' ? 25.4 / (fine ? 32 : 8) : fine ? 0.1 : 1;

/** A value that is already in use, and whose it is. */
export interface Neighbour {
  readonly value: number;
  readonly name: string;
}

export interface Snapped {
  readonly value: number;
  /** Whose value it took; null when it went to a step. */
  readonly to: string | null;
}

/** The nearest neighbour within `reach`, else the nearest whole number of steps from `zero`. */
export function snapValue(
  value: number,
  step: number,
  zero: number,
  neighbours: readonly Neighbour[],
  reach: number,
): Snapped {
  let nearest: Neighbour | null = null;
  for (const neighbour of neighbours) {
    const away = Math.abs(neighbour.value - value);
    if (away <= reach && (nearest === null || away < Math.abs(nearest.value - value))) nearest = neighbour;
  }
  if (nearest !== null) return { value: nearest.value, to: nearest.name };
  return { value: zero + Math.round((value - zero) / step) * step, to: null };
}
