/** Measured points as rows of a spreadsheet: name, along, offset, height. A row that cannot be read is named, not guessed. */
import { LONGEST_NAME } from '../../core/job/limits.ts';
import { shownName } from '../../core/job/shown.ts';
import type { Vec3 } from '../../core/geometry/vector.ts';
import type { LengthUnit } from '../../core/units/length.ts';
import { lengthKind, readUnseen } from '../fields/kinds.ts';
import { readBlock } from '../table/paste.ts';

export interface ReadPoint {
  readonly name: string;
  /** mm. */
  readonly position: Vec3;
}

export interface PointList {
  readonly points: readonly ReadPoint[];
  /** One line a row that was left out, and why. */
  readonly refusals: readonly string[];
}

const COORDINATES = ['along', 'offset', 'height'] as const;

/** Rows of four cells; bare numbers are in `unit`. Empty rows are passed over. */
export function readPointList(text: string, unit: LengthUnit): PointList {
  const points: ReadPoint[] = [];
  const refusals: string[] = [];
  for (const [index, cells] of readBlock(text).entries()) {
    if (cells.every((cell) => cell === '')) continue;
    const read = readPoint(cells, unit);
    if (typeof read === 'string') refusals.push(`Row ${index + 1}: ${read}`);
    else points.push(read);
  }
  return { points, refusals };
}

/** Why a cell is no name; null where it is one. */
export const whyTooLong = (name: string): string | null =>
  shownName(name) === name ? null : `“${shownName(name)}”: a name has at most ${LONGEST_NAME} letters`;

/** The point, or why the row is none. */
function readPoint(cells: readonly string[], unit: LengthUnit): ReadPoint | string {
  const [name = '', ...lengths] = cells;
  if (name === '') return 'has no name';
  const long = whyTooLong(name);
  if (long !== null) return long;
  if (lengths.length !== 3) return `“${name}” has ${cells.length} cells instead of 4`;
  const kind = lengthKind(unit);
  const position: number[] = [];
  for (const [axis, text] of lengths.entries()) {
    const read = readUnseen(text, kind);
    if (!read.ok) return `“${name}”, ${COORDINATES[axis]}: “${text}” ${read.why}`;
    position.push(read.value);
  }
  return { name, position: position as unknown as Vec3 };
}
