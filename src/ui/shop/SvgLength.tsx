/** A length inside a drawing: the same figures as elsewhere, its fraction raised and lowered by hand, as SVG has no sup. */
import type { ReactNode } from 'react';
import type { TapeReading } from '../../core/units/tape.ts';
import { formatLength, inchFraction, type ShownLength, type LengthUnit } from '../../core/units/length.ts';

/** Shop marks are read to 1/32 in, or 0.1 mm. */
export const markLength = (mm: number, unit: LengthUnit): ShownLength =>
  unit === 'in' ? inchFraction(mm, 32) : formatLength(mm, unit);

/** `leans`: the sign of a mark that lies a hair off its division. */
export function SvgLength({ shown, leans = '' }: { shown: ShownLength; leans?: TapeReading['leans'] }): ReactNode {
  const sign = leans !== '' && (
    <tspan className="draw-figure" dx="3">
      {leans}
    </tspan>
  );
  if (shown.numerator === 0)
    return (
      <>
        <tspan className="draw-figure">{shown.text}</tspan>
        {sign}
      </>
    );
  return (
    <>
      <tspan className="draw-figure">
        {shown.sign}
        {shown.whole > 0 && shown.whole}
      </tspan>
      <tspan className="draw-small" dx="1" dy="-4">
        {shown.numerator}
      </tspan>
      <tspan className="draw-figure" dy="4">
        ⁄
      </tspan>
      <tspan className="draw-small" dy="2">
        {shown.denominator}
      </tspan>
      <tspan dy="-2">{'​'}</tspan>
      {sign}
    </>
  );
}

/** How wide the figures are set, in pixels, at the drawing's own type size. */
export const figureWidth = (shown: ShownLength): number =>
  8.2 * (shown.numerator === 0 ? shown.text.length : String(shown.whole || '').length + shown.sign.length + 1) +
  (shown.numerator === 0 ? 0 : 6 * (String(shown.numerator).length + String(shown.denominator).length));
