/**
 * Job -> the text of its file: readable, one record a line where it fits, the same bytes for the same job. Known keys
 * stand in the order in which a person says them, others after them in alphabetical order.
 */
import { remembered } from '../remembered.ts';
import { joinedOrder } from './joined-order.ts';
import { markingPart } from './kinds/marking.ts';
import { kindOf, LISTS } from './kinds.ts';
import type { Job } from './types.ts';

/** Longer than this, an object or a list is broken over several lines. */
const LINE = 120;

/** The keys of the job itself. */
const HEAD = ['format', 'version', 'name', 'lengthUnit', 'marking', ...LISTS];
const OF_RECORDS = [...LISTS.flatMap((list) => kindOf(list).keys), ...markingPart.keys].map((line) => line.split(' '));
/** Every key that the schema knows. */
export const KEY_ORDER = joinedOrder([HEAD, ...OF_RECORDS]);
const RANK = new Map(KEY_ORDER.map((key, rank) => [key, rank]));

/**
 * The file's text. parseJob gives an equal job back. A record's own text is kept with it: records are immutable, an edit makes
 * few new ones, and the whole text is wanted after each.
 */
export const serialiseJob = (job: Job): string => `${written(job, '', true)}\n`;

function written(value: unknown, indent: string, broken: boolean): string {
  if (!isObject(value) && !Array.isArray(value)) return JSON.stringify(value);
  if (!broken) {
    const line = oneLine(value);
    if (indent.length + line.length <= LINE) return line;
  }
  const inner = `${indent}  `;
  const isCollection = (item: unknown) => Array.isArray(item) && item.some((entry) => isObject(entry));
  const join = (open: string, parts: readonly string[], close: string) =>
    parts.length === 0 ? open + close : `${open}\n${parts.map((part) => inner + part).join(',\n')}\n${indent}${close}`;
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

/** How far the lists of records are set in. */
const RECORDS = '  ';

const recordText = remembered((record: object): string => written(record, `${RECORDS}  `, false));

function oneLine(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(oneLine).join(', ')}]`;
  if (!isObject(value)) return JSON.stringify(value);
  const entries = orderedEntries(value);
  if (entries.length === 0) return '{}';
  return `{ ${entries.map(([key, item]) => `${JSON.stringify(key)}: ${oneLine(item)}`).join(', ')} }`;
}

const isObject = (value: unknown): value is object =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

function orderedEntries(value: object): readonly (readonly [string, unknown])[] {
  const rank = (key: string) => RANK.get(key) ?? KEY_ORDER.length;
  return Object.entries(value)
    .filter(([, item]) => item !== undefined)
    .toSorted(([a], [b]) => rank(a) - rank(b) || (a < b ? -1 : 1));
}
