/** A length as the bay writes it: in the job's unit, the fraction set as one. */
import { formatLength, type LengthUnit } from '../../core/units/length.ts';

export function Figure({ mm, unit }: { readonly mm: number; readonly unit: LengthUnit }) {
  const shown = formatLength(mm, unit);
  if (unit === 'mm') return <span className="figure">{shown.text} mm</span>;
  const whole = shown.numerator === 0 || shown.whole !== 0;
  return (
    <span className="figure">
      {shown.sign}
      {whole && shown.whole}
      {shown.numerator !== 0 && (
        <span className="fraction">
          <sup>{shown.numerator}</sup>⁄<sub>{shown.denominator}</sub>
        </span>
      )}
      ″
    </span>
  );
}
