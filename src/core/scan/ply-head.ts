/** The head of a PLY file: what lies in it, and how (Turk, The PLY Polygon File Format, Stanford 1994). Of what it claims nothing is believed here. */
import { fault, quoted, type Fault } from '../job/fault.ts';
import { textOf } from './text.ts';

/** Bytes of each type of number, by both names that it goes by. */
const SIZES = {
  char: 1,
  int8: 1,
  uchar: 1,
  uint8: 1,
  short: 2,
  int16: 2,
  ushort: 2,
  uint16: 2,
  int: 4,
  int32: 4,
  uint: 4,
  uint32: 4,
  float: 4,
  float32: 4,
  double: 8,
  float64: 8,
} as const;

export type PlyType = keyof typeof SIZES;

/** How many bytes a number of the type takes. */
export const bytesOf = (type: PlyType): number => SIZES[type];

export type PlyProperty =
  | { readonly name: string; readonly type: PlyType; readonly count?: undefined }
  /** A list: its length, as a number of type `count`, and so many of `type`. */
  | { readonly name: string; readonly type: PlyType; readonly count: PlyType };

export interface PlyElement {
  readonly name: string;
  readonly claimed: number;
  readonly properties: readonly PlyProperty[];
}

export interface PlyHead {
  readonly format: 'ascii' | 'little' | 'big';
  readonly elements: readonly PlyElement[];
  /** The byte, and the line, at which the data begin. */
  readonly ends: number;
  readonly lines: number;
}

const FORMATS = { ascii: 'ascii', binary_little_endian: 'little', binary_big_endian: 'big' } as const;

/** Lines. Nobody's head is longer, and a file that never ends its head is none. */
const LONGEST_HEAD = 1000;

/** The head, or what is wrong with it. */
export function readPlyHead(bytes: Uint8Array): PlyHead | Fault {
  const text = textOf(bytes);
  const elements: { name: string; claimed: number; properties: PlyProperty[] }[] = [];
  let format: PlyHead['format'] | null = null;
  for (; text.line() <= LONGEST_HEAD;) {
    if (!text.nextLine()) return fault(`line ${text.line()}`, 'it ends before its end_header');
    const at = (message: string): Fault => fault(`line ${text.line()}`, message);
    const word = text.word();
    if (word === 'end_header') {
      if (format === null) return at('nothing says whether the data are ascii or binary');
      text.nextLine();
      return { format, elements, ends: text.at(), lines: text.line() };
    }
    if (word === 'format') {
      const name = text.word() ?? '';
      if (!Object.hasOwn(FORMATS, name)) return at(`no format ${quoted(name)}`);
      format = FORMATS[name as keyof typeof FORMATS];
    } else if (word === 'element') {
      const name = text.word() ?? '';
      const claimed = text.number();
      if (!Number.isSafeInteger(claimed) || claimed < 0) return at(`${quoted(name)} without a number of them`);
      elements.push({ name, claimed, properties: [] });
    } else if (word === 'property') {
      const property = readProperty(text.word(), text.word(), () => text.word());
      if (typeof property === 'string') return at(property);
      if (elements.length === 0) return at('a property of nothing');
      elements.at(-1)!.properties.push(property);
    }
  }
  return fault(`line ${LONGEST_HEAD}`, 'still no end_header');
}

function readProperty(first: string | null, second: string | null, next: () => string | null): PlyProperty | string {
  const isType = (word: string | null): word is PlyType => word !== null && Object.hasOwn(SIZES, word);
  if (first === 'list') {
    const [count, type, name] = [second, next(), next()];
    if (!isType(count) || !isType(type) || name === null) return 'a list of no known type';
    if (bytesOf(count) === 8 || count.startsWith('float')) return 'a list whose length is no whole number';
    return { name, type, count };
  }
  if (!isType(first) || second === null) return `no type ${quoted(first ?? '')}`;
  return { name: second, type: first };
}
