/** Angles as people type and read them, in degrees: 52, 52.5°, -12 deg. */
import type { Degrees } from '../geometry/angle.ts';
import { commaRefusal, DECIMAL, fixedText, plainText, read, refused, type Typed } from './typed.ts';

const ANGLE = new RegExp(`^([-+]?) ?(${DECIMAL}) ?(?:°|deg|degrees)?$`, 'u');

/** Reads a typed angle. Value in degrees, from -360 to 360; anything else is refused with a reason. */
export function parseAngle(text: string): Typed {
  const plain = plainText(text);
  if (plain === '') return refused('type an angle');
  const comma = commaRefusal(plain);
  if (comma !== null) return refused(comma);
  const parts = ANGLE.exec(plain);
  if (!parts) return refused('not an angle');
  const size = Number(parts[2]);
  if (size > 360) return refused('more than a full turn');
  return read(parts[1] === '-' && size !== 0 ? -size : size);
}

/** Degrees with `places` decimals, without the degree sign; 52.5. */
export const formatAngle = (angle: Degrees, places: number): string => fixedText(angle, places);
