/** A length as the bay writes it: in the job's unit, the fraction set as one. */
import type { LengthUnit } from '../core/job/types.ts';
import { formatLength } from '../core/units/length.ts';

interface Props {
  readonly mm: number;
  readonly unit: LengthUnit;
  /** The smallest step shown, in the unit. */
  readonly resolution?: number;
}

export function Figure({ mm, unit, resolution = unit === 'in' ? 1 / 32 : 0.1 }: Props) {
  const shown = formatLength(mm, unit, resolution);
  if (unit === 'mm') return <span className="bay-figure">{shown.text} mm</span>;
  const whole = shown.numerator === 0 || shown.whole !== 0;
  return (
    <span className="bay-figure">
      {shown.sign}
      {whole && shown.whole}
      {shown.numerator !== 0 && (
        <span className="bay-fraction">
          <span>{shown.numerator}</span>
          <span>{shown.denominator}</span>
        </span>
      )}
      ″
    </span>
  );
}
