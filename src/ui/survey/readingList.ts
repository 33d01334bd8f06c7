/** Readings as rows of a spreadsheet: kind, from, to, value. A row that cannot be read is named, not guessed; what was read is told before it is added. */
import { pointCalled, type SaidReading } from '../../core/edit/measurements.ts';
import type { Job } from '../../core/job/types.ts';
import { isAtOne, type Way } from '../../core/survey/ways.ts';
import { WAY_WORDS, wayCalled } from '../../core/words/ways.ts';
import { readUnseen } from '../fields/kinds.ts';
import { readBlock } from '../table/paste.ts';
import { kindOfWay } from './line.ts';
import { whyTooLong } from './pointList.ts';

export interface ReadRow {
  readonly said: SaidReading;
  /** "Height, Roof, left (new point): 44 1/8 in". */
  readonly inWords: string;
}

export interface ReadingList {
  readonly rows: readonly ReadRow[];
  /** One line a row that was left out, and why. */
  readonly refusals: readonly string[];
}

/** Bare lengths are in the job's unit; empty rows are passed over. At one point alone the cell of the second may be empty, or left out. */
export function readReadingList(text: string, job: Pick<Job, 'points' | 'lengthUnit'>): ReadingList {
  const rows: ReadRow[] = [];
  const refusals: string[] = [];
  const named = new Set<string>();
  for (const [index, cells] of readBlock(text).entries()) {
    if (cells.every((cell) => cell === '')) continue;
    const read = readRow(cells, job, named);
    if (typeof read === 'string') refusals.push(`Row ${index + 1}: ${read}`);
    else rows.push(read);
  }
  return { rows, refusals };
}

/** The reading, or why the row is none. `named`: what rows before it have named for the first time. */
function readRow(
  cells: readonly string[],
  { points, lengthUnit }: Pick<Job, 'points' | 'lengthUnit'>,
  named: Set<string>,
): ReadRow | string {
  const [word = '', from = '', ...others] = cells;
  const way = wayCalled(word);
  if (way === null) return `“${word}” is no kind of measurement: ${Object.values(WAY_WORDS).join(', ').toLowerCase()}`;
  const rest = isAtOne(way) && others.length === 1 ? ['', ...others] : others;
  const [to = '', value = ''] = rest;
  const wrong = whyNot(way, from, to, rest.length);
  if (wrong !== null) return wrong;
  const kind = kindOfWay(way, lengthUnit);
  const read = way === 'plumb' ? ({ ok: true, value: 0 } as const) : readUnseen(value, kind);
  if (!read.ok) return `“${value}” ${read.why}`;
  const isTwo = !isAtOne(way);
  const called = (name: string): string => {
    const isNew = pointCalled({ points }, name) === null && !named.has(name.toLowerCase());
    named.add(name.toLowerCase());
    return isNew ? `${name} (new point)` : name;
  };
  const where = isTwo ? `${called(from)} – ${called(to)}` : called(from);
  const reads = way === 'plumb' ? '' : `: ${kind.show(read.value)}${way === 'slope' ? '°' : ` ${lengthUnit}`}`;
  return {
    said: { way, from: { name: from }, ...(isTwo && { to: { name: to } }), value: read.value },
    inWords: `${WAY_WORDS[way]}, ${where}${reads}`,
  };
}

function whyNot(way: Way, from: string, to: string, cells: number): string | null {
  if (cells > 2) return `has ${cells + 2} cells instead of 4`;
  if (from === '') return 'names no point';
  if (!isAtOne(way) && to === '') return 'names no second point';
  if (isAtOne(way) && to !== '') return `${WAY_WORDS[way].toLowerCase()} is read at one point, and the row names two`;
  return whyTooLong(from) ?? whyTooLong(to);
}
