/**
 * Plain data -> the text of a file: readable, one record a line where it fits, the same bytes for the same data. Known keys
 * stand in the order in which a person says them, others after them in alphabetical order.
 */
import { remembered } from '../remembered.ts';

/** Longer than this, an object or a list is broken over several lines. */
const LINE = 120;
/** How far the lists of records are set in. */
const RECORDS = '  ';

/**
 * What writes files whose keys stand in this order. A record's own text is kept with it: records are immutable, an edit makes
 * few new ones, and the whole text is wanted after each.
 */
export function textWriter(keyOrder: readonly string[]): (file: object) => string {
  const ranks = new Map(keyOrder.map((key, rank) => [key, rank]));
  const rank = (key: string): number => ranks.get(key) ?? keyOrder.length;

  const recordText = remembered((record: object): string => written(record, `${RECORDS}  `, false));

  function written(value: unknown, indent: string, broken: boolean): string {
    if (!isObject(value) && !Array.isArray(value)) return JSON.stringify(value);
    if (!broken) {
      const line = oneLine(value);
      if (indent.length + line.length <= LINE) return line;
    }
    const inner = `${indent}  `;
    const join = (open: string, parts: readonly string[], close: string) =>
      parts.length === 0
        ? open + close
        : `${open}\n${parts.map((part) => inner + part).join(',\n')}\n${indent}${close}`;
    if (Array.isArray(value)) {
      return join(
        '[',
        value.map((item) => (indent === RECORDS && isObject(item) ? recordText(item) : written(item, inner, false))),
        ']',
      );
    }
    const atTop = indent === '';
    return join(
      '{',
      orderedEntries(value).map(
        ([key, item]) => `${JSON.stringify(key)}: ${written(item, inner, atTop && isCollection(item))}`,
      ),
      '}',
    );
  }

  function oneLine(value: unknown): string {
    if (Array.isArray(value)) return `[${value.map(oneLine).join(', ')}]`;
    if (!isObject(value)) return JSON.stringify(value);
    const entries = orderedEntries(value);
    if (entries.length === 0) return '{}';
    return `{ ${entries.map(([key, item]) => `${JSON.stringify(key)}: ${oneLine(item)}`).join(', ')} }`;
  }

  const orderedEntries = (value: object): readonly (readonly [string, unknown])[] =>
    Object.entries(value)
      .filter(([, item]) => item !== undefined)
      .toSorted(([a], [b]) => rank(a) - rank(b) || (a < b ? -1 : 1));

  return (file) => `${written(file, '', true)}\n`;
}

const isObject = (value: unknown): value is object =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const isCollection = (value: unknown): boolean => Array.isArray(value) && value.some((entry) => isObject(entry));
