/**
 * Words within an SVG text. A fraction's figures are raised and lowered by hand, since the face has no small ones and SVG no sup; a hair
 * space, which the face has none of either, is a step.
 */
import { Fragment, type ReactNode } from 'react';
import { FRACTION_SIZE, HAIR_SPACE, splitFraction, widthOf } from './letters.ts';

/** Of the letter's body. */
const RAISED = 0.27;
const LOWERED = 0.1;

export function SetWords({ text, size }: { text: string; size: number }): ReactNode {
  const fraction = splitFraction(text);
  if (fraction === null) return <Stepped text={text} size={size} />;
  const small = size * FRACTION_SIZE;
  return (
    <>
      {fraction.before}
      <tspan dy={-RAISED * size} fontSize={small}>
        {fraction.numerator}
      </tspan>
      <tspan dy={RAISED * size}>⁄</tspan>
      <tspan dy={LOWERED * size} fontSize={small}>
        {fraction.denominator}
      </tspan>
      <tspan dy={-LOWERED * size}>
        <Stepped text={fraction.after} size={size} />
      </tspan>
    </>
  );
}

const Stepped = ({ text, size }: { text: string; size: number }): ReactNode =>
  text.split(HAIR_SPACE).map((part, i) =>
    i === 0 ? (
      <Fragment key={i}>{part}</Fragment>
    ) : (
      <tspan key={i} dx={widthOf(HAIR_SPACE) * size}>
        {part}
      </tspan>
    ),
  );
