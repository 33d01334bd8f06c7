/** What is left over of a reading, in few words. */
import { formatAngle } from '../units/angle.ts';
import { formatLength, MM_PER_INCH, type LengthUnit } from '../units/length.ts';
import type { Measurement } from '../job/kinds/measurement.ts';
import type { Residual } from '../survey/adjust.ts';

/** "off 2 mm", "off 0.3°"; "nothing checks it" where no other reading says the same. */
export function leftOverInWords(
  { kind }: Pick<Measurement, 'kind'>,
  { residual, share }: Residual,
  unit: LengthUnit,
): string {
  return share === 0 ? 'nothing checks it' : offByInWords({ kind }, residual, unit);
}

/** "off 2 mm", "off 0.3°": mm, or degrees, whichever way. */
export function offByInWords({ kind }: Pick<Measurement, 'kind'>, by: number, unit: LengthUnit): string {
  const off = Math.abs(by);
  return kind === 'inclination' ? `off ${formatAngle(off, 1)}°` : `off ${formatLength(off, unit).text} ${unit}`;
}

/** "± 1.4 mm", "± 0.06 in": one standard deviation, mm. */
export const sureInWords = (mm: number, unit: LengthUnit): string =>
  unit === 'in' ? `± ${(mm / MM_PER_INCH).toFixed(2)} in` : `± ${mm.toFixed(1)} mm`;
