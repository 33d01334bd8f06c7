/**
 * Text -> plain data, for text from anywhere. Strict JSON: no comments, no trailing commas. The first error in the
 * syntax is named by line and column. Nesting is measured before anything recurses, so that 50 000 brackets are a
 * fault and not an overflow. Keys that every object already has (`__proto__`, `constructor`, ...) and keys given
 * twice are refused, never assigned through.
 */
import { createScanner, parseTree, type Node, type ParseError } from 'jsonc-parser';
import { fault, NOT_FINITE, placeOf, quoted, type Fault } from './fault.ts';

export type Plain = null | boolean | number | string | readonly Plain[] | PlainObject;
export type PlainObject = { readonly [key: string]: Plain };

/** A job needs seven levels; blocks that later versions bring may need a few more. */
const DEEPEST = 64;

// Numbers of the parser's tokens and errors: its own names are const enums, which are not there at run time.
const [OPEN_BRACE, CLOSE_BRACE, OPEN_BRACKET, CLOSE_BRACKET, END] = [1, 2, 3, 4, 17];

const SYNTAX: Readonly<Record<number, string>> = {
  2: 'not a number as JSON writes it',
  3: 'a name in double quotes is missing',
  4: 'a value is missing',
  5: 'a colon is missing',
  6: 'a comma or a closing bracket is missing',
  7: 'a closing } is missing',
  8: 'a closing ] is missing',
  9: 'something stands after the end',
  10: 'comments are not part of JSON',
  11: 'comments are not part of JSON',
  12: 'a closing quote is missing',
  13: 'not a number as JSON writes it',
  14: 'not an escape as JSON writes it',
  15: 'not an escape as JSON writes it',
  16: 'a line break or control character inside quotes',
};

/** What stands in the text, and its faults; `value` is null when the text could not be read at all. */
export interface PlainReading {
  readonly value: Plain;
  readonly faults: readonly Fault[];
}

/** The plain data in a text, or why it is none, with line and column. */
export function readPlain(text: string): PlainReading {
  if (text.trim() === '') return { value: null, faults: [fault('', 'the file is empty')] };
  const { readable, tooDeepAt } = measureNesting(text);
  if (tooDeepAt !== null) {
    return { value: null, faults: [fault('', `${lineAndColumn(text, tooDeepAt)}: nested more than ${DEEPEST} deep`)] };
  }
  const errors: ParseError[] = [];
  const tree = parseTree(readable, errors, { disallowComments: true, allowTrailingComma: false });
  const first = errors.toSorted((a, b) => a.offset - b.offset)[0];
  if (first || !tree) return { value: null, faults: [syntaxFault(text, first)] };
  const faults: Fault[] = [];
  return { value: plainValue(tree, [], faults), faults };
}

/**
 * Whether a value is what a text could hold: no dates, rings, numbers that are none, or names that every object already has, and
 * nested no deeper.
 */
export function isPlain(value: unknown, levels = DEEPEST): value is Plain {
  if (value === null || typeof value === 'string' || typeof value === 'boolean') return true;
  if (typeof value === 'number') return Number.isFinite(value);
  if (typeof value !== 'object' || levels === 0) return false;
  if (Array.isArray(value)) return value.every((item) => isPlain(item, levels - 1));
  if (Object.getPrototypeOf(value) !== Object.prototype) return false;
  return Object.entries(value).every(([key, item]) => isAllowedName(key) && isPlain(item, levels - 1));
}

const isAllowedName = (key: string): boolean => !(key in Object.prototype) && key !== 'prototype';

/**
 * Follows the brackets. A bracket that closes the wrong thing ends what is `readable`: the first error stands there or
 * before it, and up to there the parser nests no deeper than was counted.
 */
function measureNesting(text: string): { readable: string; tooDeepAt: number | null } {
  const scanner = createScanner(text, true);
  const open: number[] = [];
  for (let token: number = scanner.scan(); token !== END; token = scanner.scan()) {
    if (token === OPEN_BRACE || token === OPEN_BRACKET) {
      open.push(token === OPEN_BRACE ? CLOSE_BRACE : CLOSE_BRACKET);
      if (open.length > DEEPEST) return { readable: '', tooDeepAt: scanner.getTokenOffset() };
    } else if (token === CLOSE_BRACE || token === CLOSE_BRACKET) {
      if (open.pop() !== token) return { readable: text.slice(0, scanner.getPosition()), tooDeepAt: null };
    }
  }
  return { readable: text, tooDeepAt: null };
}

function syntaxFault(text: string, error: ParseError | undefined): Fault {
  if (!error) return fault('', 'not JSON');
  const what = SYNTAX[error.error] ?? `unexpected ${quoted(text.slice(error.offset, error.offset + error.length))}`;
  return fault('', `${lineAndColumn(text, error.offset)}: ${what}`);
}

function lineAndColumn(text: string, offset: number): string {
  const lines = text.slice(0, offset).split(/\r\n|\r|\n/u);
  return `line ${lines.length}, column ${lines.at(-1)!.length + 1}`;
}

function plainValue(node: Node, keys: readonly (string | number)[], faults: Fault[]): Plain {
  if (node.type === 'array')
    return (node.children ?? []).map((item, index) => plainValue(item, [...keys, index], faults));
  if (node.type === 'object') return plainObject(node, keys, faults);
  if (node.type !== 'number') return node.value as Plain;
  if (!Number.isFinite(node.value)) faults.push(fault(placeOf(keys), NOT_FINITE));
  return node.value === 0 ? 0 : (node.value as number); // -0 is written 0 and must come back the same
}

function plainObject(node: Node, keys: readonly (string | number)[], faults: Fault[]): PlainObject {
  const result: Record<string, Plain> = {};
  for (const property of node.children ?? []) {
    const [name, value] = property.children!;
    const key = name!.value as string;
    const place = placeOf([...keys, key]);
    if (!isAllowedName(key)) faults.push(fault(place, 'not allowed as a name'));
    else if (Object.hasOwn(result, key)) faults.push(fault(place, 'given twice'));
    else result[key] = plainValue(value!, [...keys, key], faults);
  }
  return result;
}
