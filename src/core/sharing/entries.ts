/**
 * A job on several devices, as each has written it. Every field of every record is a cell with a path of its own: nodes, n12, at. A device
 * writes a cell in an entry of its own and never in another's, so no entry is ever written by two: whatever carries entries from device to device has
 * nothing to decide, and nothing that was written goes lost. Which entry of a cell counts is said here alone: the latest.
 *
 * Times are those of a hybrid logical clock: the device's own, but always later than the latest that it has seen (Kulkarni and others, "Logical
 * physical clocks", 2014). So what was written in the knowledge of something counts before that, however wrong the clocks are; and of
 * two that were written apart the one that was later by the clocks.
 */
import { isPlain, type Plain } from '../job/plain.ts';

/** Of a cell. The first part is the list, the second the record's key in it, then the field; of what is in no list the first is empty. */
export type Path = readonly string[];

/** What one device wrote in one cell. */
export interface Entry {
  readonly device: string;
  readonly path: Path;
  /** ms since 1970, or one more than the latest seen. */
  readonly at: number;
  /** The latest that the device knew of others when it wrote: in this cell, or where a record is taken out in any of its. 0: nothing. */
  readonly over: number;
  /** undefined: taken out. */
  readonly value: Plain | undefined;
}

/** What all devices have written in one cell. */
export interface Cell {
  readonly path: Path;
  /** The latest; of two of the same moment that of the device whose name is greater, so that all devices say the same. */
  readonly counts: Entry;
  readonly others: readonly Entry[];
}

/** The cells of one record, or of one block beside the lists, by key of the path from there on. Another map where one of them is another. */
export type Group = ReadonlyMap<string, Cell>;

/** By key of the first two parts of their paths. */
export type Cells = ReadonlyMap<string, Group>;

/** An entry as it is carried: under its key, and as a list of what stands in it. */
export type Carried = readonly [key: string, written: readonly Plain[]];

/** A path as one text. As in a JSON pointer (RFC 6901) a stroke parts, ~1 stands for a stroke in a part and ~0 for ~. */
export const keyOf = (path: Path): string => path.map(escaped).join('/');

/** The path of a key. */
export const pathOf = (key: string): Path => key.split('/').map(unescaped);

const escaped = (part: string): string => part.replaceAll('~', '~0').replaceAll('/', '~1');
const unescaped = (part: string): string => part.replaceAll('~1', '/').replaceAll('~0', '~');

/** The entry as it is carried. */
export const carried = ({ device, path, at, over, value }: Entry): Carried => [
  keyOf([device, ...path]),
  value === undefined ? [at, over] : [at, over, value],
];

/** The entry that was carried; null where it has not the shape of one: it came from outside. */
export function entryOf(key: string, written: unknown): Entry | null {
  const [device = '', ...path] = pathOf(key);
  if (!Array.isArray(written) || written.length < 2 || written.length > 3 || path.length < 2) return null;
  const [at, over, value] = written as readonly unknown[];
  if (!isTime(at) || !isTime(over) || !(value === undefined || isPlain(value))) return null;
  return { device, path, at, over, value };
}

const isTime = (value: unknown): value is number => Number.isSafeInteger(value) && (value as number) >= 0;

/** The cells with entries more: a device's earlier one of the same cell goes, whichever comes first. */
export function withEntries(cells: Cells, entries: Iterable<Entry>): Cells {
  const result = new Map(cells);
  const touched = new Map<string, Map<string, Cell>>();
  for (const entry of entries) {
    const [key, rest] = [keyOf(entry.path.slice(0, 2)), keyOf(entry.path.slice(2))];
    const group = touched.get(key) ?? new Map(cells.get(key));
    const cell = withEntry(group.get(rest), entry);
    touched.set(key, group.set(rest, cell));
    result.set(key, group);
  }
  return result;
}

function withEntry(cell: Cell | undefined, entry: Entry): Cell {
  const own = cell && entriesOf(cell).find(({ device }) => device === entry.device);
  if (cell === undefined) return { path: entry.path, counts: entry, others: [] };
  if (own !== undefined && own.at >= entry.at) return cell;
  const all = [...entriesOf(cell).filter((each) => each !== own), entry];
  const counts = all.reduce((latest, each) => (isLater(each, latest) ? each : latest));
  return { path: cell.path, counts, others: all.filter((each) => each !== counts) };
}

/** All entries of a cell, that which counts first. */
export const entriesOf = ({ counts, others }: Cell): readonly Entry[] => [counts, ...others];

const isLater = (a: Entry, b: Entry): boolean => a.at > b.at || (a.at === b.at && a.device > b.device);

/** Whether the entry was written by another, and not known to whoever wrote `by`. */
export const isUnknownTo = (entry: Entry, by: Entry): boolean => entry.device !== by.device && entry.at > by.over;

/** The cell of a path; undefined where nobody has written in it. */
export const cellAt = (cells: Cells, path: Path): Cell | undefined =>
  cells.get(keyOf(path.slice(0, 2)))?.get(keyOf(path.slice(2)));

/** When something is written now: by the device's clock, ms since 1970, and later than all that stands there. */
export const nextTime = (cells: Cells, now: number): number => Math.max(now, latestIn(cells) + 1);

function latestIn(cells: Cells): number {
  let latest = 0;
  for (const group of cells.values()) for (const { counts } of group.values()) latest = Math.max(latest, counts.at);
  return latest;
}
