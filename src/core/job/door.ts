/**
 * What all files of the program come in by, whatever is in them: text to plain data, then format and version, then what earlier
 * versions were, brought up, then the shape, with what may be left out filled in. Nothing throws, whatever the text.
 */
import * as v from 'valibot';
import { fault, placeOf, quoted, type Fault } from './fault.ts';
import { readPlain, type Plain, type PlainObject } from './plain.ts';

/** A sort of file. */
export interface FileFormat<D> {
  /** As the file's first line says it: cagewright/job. */
  readonly format: string;
  /** What it is to a person: job. */
  readonly word: string;
  /** Files of other formats that a person may take for it: what they are, and what to do. */
  readonly strangers: Readonly<Record<string, string>>;
  /** The version that this program writes, and what brings an earlier one up to it. */
  readonly present: number;
  migrate(file: PlainObject, version: number): PlainObject;
  readonly shape: v.GenericSchema;
  /** What it holds, of what the shape has left. */
  finished(shaped: unknown): D;
}

/** All but what the shape cannot check; `read` is null where the text has not the shape of one. */
export function shapeOf<D>(
  text: string,
  file: FileFormat<D>,
): { readonly read: D | null; readonly faults: readonly Fault[] } {
  const { value, faults } = readPlain(text.startsWith('\uFEFF') ? text.slice(1) : text);
  if (value === null && faults.length > 0) return { read: null, faults };
  if (!isPlainObject(value)) {
    return { read: null, faults: [fault('', `not a ${file.word}: the file holds no object`)] };
  }
  const stranger = headFaults(value, file);
  if (stranger.length > 0) return { read: null, faults: stranger };

  const shaped = v.safeParse(file.shape, file.migrate(value, value['version'] as number), { abortPipeEarly: true });
  const read = shaped.typed ? file.finished(shaped.output) : null;
  return { read, faults: [...faults, ...(shaped.issues ?? []).map(shapeFault)] };
}

/** Whether the text is a file of a later version of the program: nothing is wrong with it, but this program cannot read it. */
export function isOfLater(text: string, { format, present }: Pick<FileFormat<unknown>, 'format' | 'present'>): boolean {
  const { value } = readPlain(text);
  return isPlainObject(value) && value['format'] === format && isLater(Number(value['version']), present);
}

/** The first of each place. */
export function onePerPlace(faults: readonly Fault[]): readonly Fault[] {
  const seen = new Set<string>();
  return faults.filter(({ place }) => !seen.has(place) && seen.add(place));
}

const isPlainObject = (value: Plain): value is PlainObject =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Whether it is such a file at all, and of a version that this program reads. */
function headFaults({ format, version }: PlainObject, file: Omit<FileFormat<unknown>, 'finished'>): Fault[] {
  if (format === undefined) {
    return [fault('format', `missing: a ${file.word} file begins with "format": "${file.format}"`)];
  }
  if (typeof format === 'string' && Object.hasOwn(file.strangers, format)) {
    return [fault('format', file.strangers[format]!)];
  }
  if (format !== file.format) {
    return [fault('format', `not "${file.format}"${typeof format === 'string' ? ` but ${quoted(format)}` : ''}`)];
  }
  if (version === undefined) return [fault('version', 'missing')];
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    return [fault('version', 'not a whole number from 1 up')];
  }
  if (!isLater(version, file.present)) return [];
  return [fault('version', `${version} was made by a later version of the program, which reads up to ${file.present}`)];
}

const isLater = (version: number, present: number): boolean => Number.isInteger(version) && version > present;

type Issue = v.BaseIssue<unknown>;

const TYPE_WORDS: Readonly<Record<string, string>> = {
  number: 'not a number',
  string: 'not text',
  boolean: 'not true or false',
  Array: 'not a list',
  Object: 'not an object',
};

function shapeFault(issue: Issue): Fault {
  const place = placeOf((issue.path ?? []).map(({ key }) => key as string | number));
  const worded = issue.message !== '' && !issue.message.startsWith('Invalid ');
  return fault(place, worded ? issue.message : shapeMessage(issue));
}

function shapeMessage({ input, expected, type }: Issue): string {
  if (type === 'strict_tuple' && expected === 'never') return 'one too many';
  if (input === undefined) return 'missing';
  return (
    TYPE_WORDS[expected ?? ''] ?? `not ${(expected ?? '').replace(/[()]| \| never/gu, '').replaceAll(' | ', ' or ')}`
  );
}
