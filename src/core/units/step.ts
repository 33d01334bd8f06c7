/**
 * Lengths brought to the steps in which they are shown, always to the same side: a gap is never shown larger than it
 * is, nor what is missing from it smaller.
 */
import { MM_PER_INCH, type LengthUnit } from './length.ts';

/** Of one step: what arithmetic leaves, so that a length on a step stays there. */
const ROUND_OFF = 1e-6;

const stepOf = (unit: LengthUnit, resolution: number): number => resolution * (unit === 'in' ? MM_PER_INCH : 1);

/** The greatest whole number of steps that is no more than `mm`, in mm. `resolution` is one step, in `unit`: 1/16, 0.1. */
export function stepBelow(mm: number, unit: LengthUnit, resolution: number): number {
  const step = stepOf(unit, resolution);
  return Math.floor(mm / step + ROUND_OFF) * step;
}

/** The least whole number of steps that is no less than `mm`, in mm. */
export function stepAbove(mm: number, unit: LengthUnit, resolution: number): number {
  const step = stepOf(unit, resolution);
  return Math.ceil(mm / step - ROUND_OFF) * step;
}
