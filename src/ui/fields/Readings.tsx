/** Lengths and angles as read-outs: fractions set as fractions, and the same in plain words for a screen reader. */
import type { ReactNode } from 'react';
import { toDegrees, type Radians } from '../../core/geometry/angle.ts';
import { formatAngle } from '../../core/units/angle.ts';
import { formatLength, inchFraction, type ShownLength } from '../../core/units/length.ts';
import { useWorkspace } from '../../store/workspace.ts';

/**
 * A length in the job's unit. `parts`: the fraction of an inch it is rounded to, 16 unless said. `stored`: it is what a
 * person entered, so rounding is shown.
 */
export function Length(props: { mm: number; parts?: 16 | 32; withUnit?: boolean; stored?: boolean }): ReactNode {
  const { mm, parts = 16, withUnit = false, stored = false } = props;
  const unit = useWorkspace((state) => state.job.lengthUnit);
  const shown = unit === 'in' ? inchFraction(mm, parts) : formatLength(mm, unit);
  return (
    <span className="figure">
      <span className="spoken-only">{`${shown.text} ${unit}`}</span>
      <span aria-hidden="true">
        {stored ? <Rounded shown={shown} /> : <Fraction shown={shown} />}
        {withUnit && <span className="figure-unit"> {unit}</span>}
      </span>
    </span>
  );
}

/** What stands in the job, with ≈ before it where the figures shown are rounded: a typed 368 mm is not quite 14 1/2. */
export function Rounded({ shown }: { shown: ShownLength }): ReactNode {
  return (
    <>
      {!shown.exact && <span className="figure-unit">≈</span>}
      <Fraction shown={shown} />
    </>
  );
}

/** The figures alone, with the fraction set as one. */
function Fraction({ shown }: { shown: ShownLength }): ReactNode {
  if (shown.numerator === 0) return <>{shown.text}</>;
  return (
    <>
      {shown.sign}
      {shown.whole > 0 && shown.whole}
      <span className="fraction">
        <sup>{shown.numerator}</sup>⁄<sub>{shown.denominator}</sub>
      </span>
    </>
  );
}

/** An angle given in radians, shown in degrees with `places` decimals. */
export function Angle({ radians, places = 1 }: { radians: Radians; places?: number }): ReactNode {
  return <span className="figure">{`${formatAngle(toDegrees(radians), places)}°`}</span>;
}
