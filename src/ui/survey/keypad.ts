/** Big number keys: what each does to the text of a length. */
import type { LengthUnit } from '../../core/units/length.ts';

export type Key = '0' | '1' | '2' | '3' | '4' | '5' | '6' | '7' | '8' | '9' | '.' | 'back' | 'minus' | Fraction;
/** Sixteenths of an inch that a key adds. */
export type Fraction = '1/2' | '1/4' | '1/8' | '1/16';

/** Row by row. */
export const KEYS: Readonly<Record<LengthUnit, readonly (readonly Key[])[]>> = {
  in: [
    ['7', '8', '9', '1/2'],
    ['4', '5', '6', '1/4'],
    ['1', '2', '3', '1/8'],
    ['minus', '0', 'back', '1/16'],
  ],
  mm: [['7', '8', '9', 'back'], ['4', '5', '6', 'minus'], ['1', '2', '3', '.'], ['0']],
};

const PARTS: Readonly<Record<Fraction, number>> = { '1/2': 8, '1/4': 4, '1/8': 2, '1/16': 1 };
const WHOLE = 16;

/** "-36 13/16": its sign, whole inches and fraction. */
const INCHES = /^(?<sign>-?)(?<whole>\d*)(?: ?(?<over>\d+)\/(?<under>\d+))?$/u;

const isFraction = (key: Key): key is Fraction => key in PARTS;

/** The text once the key was pressed. A fraction is added to the one that stands there, and begins anew past the inch; digits go on with the whole inches. */
export function pressed(text: string, key: Key): string {
  if (key === 'minus') return text.startsWith('-') ? text.slice(1) : `-${text}`;
  const inches = INCHES.exec(text.trim())?.groups;
  const { sign = '', whole = '', over, under } = inches ?? {};
  // What was typed in another way is no fraction of an inch: it is only gone on with.
  const sixteenths = over === undefined ? 0 : (Number(over) * WHOLE) / Number(under);
  if (inches === undefined || !Number.isInteger(sixteenths)) {
    return key === 'back' ? text.slice(0, -1) : isFraction(key) ? text : text + key;
  }
  if (isFraction(key)) return sign + spelt(whole, (sixteenths + PARTS[key]) % WHOLE);
  if (key === 'back') return over === undefined ? text.slice(0, -1) : sign + whole;
  return over === undefined ? text + key : sign + spelt(whole + key, sixteenths);
}

function spelt(whole: string, sixteenths: number): string {
  if (sixteenths === 0) return whole;
  let [over, under] = [sixteenths, WHOLE];
  while (over % 2 === 0) [over, under] = [over / 2, under / 2];
  return `${whole}${whole === '' ? '' : ' '}${over}/${under}`;
}
