/** Lengths and angles as read-outs: fractions set as fractions, and the same in plain words for a screen reader. */
import type { ReactNode } from 'react';
import { toDegrees, type Radians } from '../../core/geometry/angle.ts';
import { formatAngle } from '../../core/units/angle.ts';
import { formatLength, inchFraction, type ShownLength } from '../../core/units/length.ts';
import type { TapeReading } from '../../core/units/tape.ts';
import { exactText, stepAbove, stepBelow } from '../../core/units/step.ts';
import { useDocument } from '../../store/page.ts';

interface LengthProps {
  readonly mm: number;
  /** The fraction of an inch it is rounded to, 32 unless said: what is read off a steel rule. */
  readonly parts?: 16 | 32 | 64;
  readonly withUnit?: boolean;
  /** It is what a person entered, so rounding is shown. */
  readonly stored?: boolean;
}

/** A length in the job's unit, to the nearest step. */
export function Length({ mm, parts = 32, withUnit = false, stored = false }: LengthProps): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
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

/** A gap, to the step below it: never shown larger than it is. `unseenUnit`: a caption says the unit. */
export function GapLength({ mm, unseenUnit = false }: { mm: number; unseenUnit?: boolean }): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  return <Length mm={stepBelow(mm, unit)} withUnit={!unseenUnit} />;
}

/** What is missing from a gap, to the step above it: never shown smaller than it is. */
export function ShortfallLength({ mm }: { mm: number }): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  return <Length mm={stepAbove(mm, unit)} withUnit />;
}

/** A limit, not rounded to the step. */
export function LimitLength({ mm }: { mm: number }): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  if (formatLength(mm, unit).exact) return <Length mm={mm} withUnit />;
  return (
    <span className="figure">
      {exactText(mm, unit)}
      <span className="figure-unit"> {unit}</span>
    </span>
  );
}

/** What stands in the job, with ≈ before it where the figures shown are rounded: a typed 546 mm is not quite 21 1/2. */
export function Rounded({ shown }: { shown: ShownLength }): ReactNode {
  return (
    <>
      {!shown.exact && <span className="figure-unit">≈</span>}
      <Fraction shown={shown} />
    </>
  );
}

/** A mark on the tape, with its sign where it lies a hair beyond the division that is shown or short of it. */
export const Reading = ({ reading }: { reading: TapeReading }): ReactNode => (
  <>
    <Fraction shown={reading} />
    {reading.leans !== '' && <> {reading.leans}</>}
  </>
);

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
