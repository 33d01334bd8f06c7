/** Lengths and angles as read-outs: fractions set as fractions, and the same in plain words for a screen reader. */
import type { ReactNode } from 'react';
import { toDegrees, type Radians } from '../../core/geometry/angle.ts';
import { formatAngle } from '../../core/units/angle.ts';
import { formatLength, inchFraction, type ShownLength } from '../../core/units/length.ts';
import { useWorkspace } from '../../store/workspace.ts';

/** A length in the job's unit. `parts`: the fraction of an inch it is rounded to, 16 unless said. */
export function Length({ mm, parts = 16, withUnit = false }: { mm: number; parts?: 16 | 32; withUnit?: boolean }): ReactNode {
  const unit = useWorkspace((state) => state.job.lengthUnit);
  const shown = unit === 'in' ? inchFraction(mm, parts) : formatLength(mm, unit);
  return (
    <span className="figure">
      <span className="spoken-only">{`${shown.text} ${unit}`}</span>
      <span aria-hidden="true">
        <Fraction shown={shown} />
        {withUnit && <span className="figure-unit"> {unit}</span>}
      </span>
    </span>
  );
}

/** The figures alone, with the fraction set as one; whoever uses it gives the words beside it. */
export function Fraction({ shown }: { shown: ShownLength }): ReactNode {
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
