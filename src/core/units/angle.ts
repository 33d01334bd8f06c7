/** Angles as people type and read them, in degrees: 52, 52.5°, -12 deg. */
import type { Degrees } from '../geometry/angle.ts';
import { DIVISION_ROUNDING } from '../geometry/tolerance.ts';
import { readSum, type Summed, type Term } from './sum.ts';
import { commaRefusal, DECIMAL, fixedText, plainText, refused, type Typed } from './typed.ts';

const TERM = new RegExp(`^(${DECIMAL})( ?(?:°|(?:degrees|deg)(?![a-z])))?`, 'u');

/** Why an angle beyond 360 degrees either way is not taken, typed or from a file. */
export const PAST_A_TURN = 'more than a full turn';

/** Reads a typed angle, or a sum of angles (sum.ts). Value in degrees, from -360 to 360; anything else is refused with a reason. */
export function parseAngle(text: string): Typed {
  const plain = plainText(text);
  if (plain === '') return refused('type an angle');
  const comma = commaRefusal(plain);
  if (comma !== null) return refused(comma);
  const typed = readSum(plain, ANGLES);
  return typed.ok && !(Math.abs(typed.value) <= 360) ? refused(PAST_A_TURN) : typed;
}

const ANGLES: Summed = { what: 'an angle', unit: '°', toBase: (count) => count, term: readTerm };

/** Degrees have no fractions: 45/2 divides. */
function readTerm(text: string): Term | null {
  const found = TERM.exec(text);
  if (!found) return null;
  const named = found[2] !== undefined;
  return {
    ok: true,
    letters: found[0].length,
    value: Number(found[1]),
    named,
    fraction: false,
    joined: false,
    as: `${found[1]}${named ? '°' : ''}`,
  };
}

/** Degrees with `places` decimals, without the degree sign; 52.5. */
export const formatAngle = (angle: Degrees, places: number): string => fixedText(angle, places);

/** The nearest division of a scale, without the digits that binary fractions leave. */
export const onStep = (value: Degrees, step: Degrees): Degrees => divisions(Math.round(value / step), step);

/** The division at or below it; one that lies within rounding of a division stays there. */
export const onStepBelow = (value: Degrees, step: Degrees): Degrees =>
  divisions(Math.floor(value / step + DIVISION_ROUNDING), step);

const divisions = (count: number, step: Degrees): Degrees => Number((count * step).toFixed(6));
