/**
 * Sums as people type them into a field: 47 1/2 / 2, 44 13/16 + 1, 1200 - 44.45/2, 2 x (3' 6" - 12mm). What a single
 * number looks like says who asks (a length, an angle); how numbers are put together is said here.
 *
 *     sum      product, then any of  + product  - product
 *     product  part, then any of  * part  x part  / part     from left to right, before + and -
 *     part     number, or ( sum ); a sign may stand before the first part of a sum
 *
 * × and ÷ do as well; the letter x only between spaces. A slash between two whole numbers without spaces is a fraction's, and a
 * hyphen between a whole number and a fraction joins them, as the trade writes 21-1/2: with spaces they divide and take away.
 * A bare number is a count where it multiplies or divides, and in the job's unit where it is added.
 *
 * What is left that could be read in two ways, 100 / 4/2, is refused. The reading of everything else is given in `as`.
 */
import { read, refused, type Typed } from './typed.ts';

/** No field needs more: what is longer is a slip of the clipboard. */
const LONGEST = 80;
/** Brackets within brackets. */
const DEEPEST = 8;

type Refused = Extract<Typed, { ok: false }>;

/** A number at the start of a text. */
export interface Term {
  readonly ok: true;
  /** How much of the text it takes. */
  readonly letters: number;
  /** In the base unit (mm, degrees) where it names its unit, else a bare count. */
  readonly value: number;
  readonly named: boolean;
  /** Two whole numbers with a slash and nothing before them. */
  readonly fraction: boolean;
  /** It could have been meant as a subtraction: how it was read has to be said. */
  readonly joined: boolean;
  /** As it was read: "21 and 1/2", "50 mm". */
  readonly as: string;
}

export interface Summed {
  /** "a length". */
  readonly what: string;
  /** Of a bare number: " in", "°". */
  readonly unit: string;
  /** A count of the bare number's unit in the base unit. */
  toBase(count: number): number;
  /** The number that the text begins with; null where it begins with none. */
  term(text: string): Term | Refused | null;
}

/** A part of a sum that was read: the same fields as of a number. */
interface Part {
  readonly ok: true;
  readonly rest: string;
  readonly value: number;
  readonly named: boolean;
  readonly fraction: boolean;
  /** Something had to be worked out or chosen: the reading is to be said. */
  readonly said: boolean;
  readonly worked: boolean;
  readonly as: string;
}

/** Reads a sum of plain text (plainText). The value is in the base unit; `as` says how a sum was read, as "47 1/2 ÷ 2". */
export function readSum(plain: string, kind: Summed): Typed {
  if (plain.length > LONGEST) return refused(`more than ${LONGEST} characters`);
  if (/^[-+]? ?[^-+*×/÷()\d. ]/u.test(plain)) return refused(`not ${kind.what}`);
  const all = readAdded(plain, kind, 0);
  if (!all.ok) return all;
  if (all.rest.startsWith(')')) return refused('a bracket too many');
  if (all.rest !== '') return refused(whatFollows(plain, all.rest));
  const value = all.named ? all.value : kind.toBase(all.value);
  // The last digit of a double, left by adding 0.1 and 0.2, is no part of what was typed.
  const clean = all.worked && Number.isFinite(value) ? Number(value.toPrecision(15)) : value;
  return all.said ? { ...read(clean), as: all.as, ...(all.worked && { worked: true }) } : read(clean);
}

function readAdded(text: string, kind: Summed, depth: number): Part | Refused {
  const sign = /^ ?([-+]) ?/u.exec(text);
  const after = sign === null ? text : text.slice(sign[0].length);
  if (/^[-+]/u.test(after)) return refused('two signs in a row');
  let sum = readMultiplied(after, kind, depth);
  if (sum.ok && sign?.[1] === '-') sum = { ...sum, value: sum.value === 0 ? 0 : -sum.value, as: `−${sum.as}` };
  for (;;) {
    if (!sum.ok) return sum;
    const found = /^ ?([-+]) ?/u.exec(sum.rest);
    if (found === null) return sum;
    const rest = sum.rest.slice(found[0].length);
    const symbol = found[1] === '-' ? '−' : '+';
    const missing = operandMissing(rest, symbol);
    if (missing !== null) return missing;
    const next = readMultiplied(rest, kind, depth);
    if (!next.ok) return next;
    sum = added(sum, next, symbol, kind);
  }
}

function added(a: Part, b: Part, symbol: '+' | '−', kind: Summed): Part {
  const named = a.named || b.named;
  const base = (part: Part): number => (named && !part.named ? kind.toBase(part.value) : part.value);
  const spelled = (part: Part): string => (named && !part.named ? `${part.as}${kind.unit}` : part.as);
  return {
    ok: true,
    rest: b.rest,
    value: symbol === '+' ? base(a) + base(b) : base(a) - base(b),
    named,
    fraction: false,
    said: true,
    worked: true,
    as: `${spelled(a)} ${symbol} ${spelled(b)}`,
  };
}

function readMultiplied(text: string, kind: Summed, depth: number): Part | Refused {
  let product = readPart(text, kind, depth);
  for (;;) {
    if (!product.ok) return product;
    const found = /^(?: ?([*×/÷]) ?| (x) )/u.exec(product.rest);
    if (found === null) return product;
    const rest = product.rest.slice(found[0].length);
    const divides = found[1] === '/' || found[1] === '÷';
    const missing = operandMissing(rest, divides ? '÷' : '×');
    if (missing !== null) return missing;
    const next = readPart(rest, kind, depth);
    if (!next.ok) return next;
    // 100 / 4/2 is 50 to one and 12.5 to another, and 47 1/2/2 is nothing that anybody writes.
    const twice = divides && (next.fraction || (found[0] === '/' && /\d\/\d+$/u.test(product.as)));
    if (twice) return refused('two slashes: put brackets round the part that belongs together');
    const both = divides ? divided(product, next, kind) : multiplied(product, next, kind);
    if (!both.ok) return both;
    product = both;
  }
}

function multiplied(a: Part, b: Part, kind: Summed): Part | Refused {
  if (a.named && b.named) return refused(`${kind.what} times ${kind.what} is not ${kind.what}`);
  return worked(a, b, '×', a.value * b.value, a.named || b.named);
}

function divided(a: Part, b: Part, kind: Summed): Part | Refused {
  if (b.named) return refused(`divide by a number, not by ${kind.what}`);
  if (b.value === 0) return refused('divided by 0');
  return worked(a, b, '÷', a.value / b.value, a.named);
}

const worked = (a: Part, b: Part, symbol: string, value: number, named: boolean): Part => ({
  ok: true,
  rest: b.rest,
  value: value === 0 ? 0 : value,
  named,
  fraction: false,
  said: true,
  worked: true,
  as: `${a.as} ${symbol} ${b.as}`,
});

function readPart(text: string, kind: Summed, depth: number): Part | Refused {
  if (text.startsWith('(')) return readBrackets(text.slice(1).trimStart(), kind, depth + 1);
  const term = kind.term(text);
  if (term === null) return refused(noNumber(text, kind));
  if (!term.ok) return term;
  const { letters, value, named, fraction, joined, as } = term;
  return { ok: true, rest: text.slice(letters), value, named, fraction, said: joined, worked: false, as };
}

function readBrackets(text: string, kind: Summed, depth: number): Part | Refused {
  if (depth > DEEPEST) return refused(`brackets more than ${DEEPEST} deep`);
  if (text.startsWith(')')) return refused('nothing in the brackets');
  const inside = readAdded(text, kind, depth);
  if (!inside.ok) return inside;
  const rest = inside.rest.trimStart();
  if (rest === '') return refused('a bracket is not closed');
  if (!rest.startsWith(')')) return refused(whatFollows(text, rest));
  return { ...inside, rest: rest.slice(1), fraction: false, as: `(${inside.as})` };
}

function operandMissing(rest: string, symbol: string): Refused | null {
  if (rest === '' || rest.startsWith(')')) return refused(`nothing after ${symbol}`);
  if (/^[-+]/u.test(rest)) return refused('two signs in a row');
  return /^[*×/÷]/u.test(rest) ? refused(`nothing between ${symbol} and ${rest[0]}`) : null;
}

function noNumber(text: string, { what }: Summed): string {
  if (text === '' || text === '.') return `not ${what}`;
  if (text.startsWith(')')) return 'a bracket too many';
  const symbol = /^[*×/÷]/u.exec(text);
  return symbol ? `nothing before ${symbol[0]}` : `“${text.slice(0, 12)}” is not ${what}`;
}

/** Why the sum cannot go on with `rest`, which stands at the end of `text`. */
function whatFollows(text: string, rest: string): string {
  const spaced = /^[-+]? ?(\d+) (\d+)\b(?! ?\/)/u.exec(text);
  if (spaced && rest.trimStart().startsWith(spaced[2]!))
    return `two numbers: ${spaced[1]}${spaced[2]} or ${spaced[1]}.${spaced[2]}?`;
  const next = rest.trimStart();
  if (next.startsWith('(')) return 'say before the bracket what is done with it: + - * /';
  if (/^[.\d]/u.test(next)) return `nothing between the numbers before “${next.slice(0, 12)}”`;
  return `“${next.slice(0, 12)}” cannot be read`;
}
