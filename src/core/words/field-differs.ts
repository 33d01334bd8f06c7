/** A field of a record in which two states of a job differ, in words: what it is called, and what stands in it on either side, names in the place of ids. */
import { figure } from '../job/fault.ts';
import { bareId, isPrimed } from '../job/reference.ts';
import { shownName } from '../job/shown.ts';
import type { Job, NamedList } from '../job/types.ts';
import { steelOf } from '../springback/steels.ts';
import type { FieldDiffers } from '../take-over/differences.ts';
import { exactText } from '../units/step.ts';
import { totalMassInWords } from '../units/mass.ts';
import { capital, listed } from './lists.ts';

export interface FieldLine {
  readonly label: string;
  readonly here: string;
  readonly there: string;
}

/** Lines of one record that are shown; what is beyond is counted. */
const MOST_LINES = 6;

type Fields = Readonly<Record<string, unknown>>;

const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** A line for each figure, name or word that is not alike, by what is within what; lengths in the unit of `here`. */
export function fieldLines(fields: readonly FieldDiffers[], here: Job, there: Job): readonly FieldLine[] {
  const lines = fields.flatMap(({ field, here: a, there: b }) => linesOf([field], a, b, here, there));
  const over = lines.length - MOST_LINES;
  if (over < 2) return lines;
  return [...lines.slice(0, MOST_LINES), { label: `and ${over} more`, here: '', there: '' }];
}

function linesOf(path: readonly string[], a: unknown, b: unknown, here: Job, there: Job): readonly FieldLine[] {
  if (JSON.stringify(a) === JSON.stringify(b)) return [];
  if (isFields(a) && isFields(b)) {
    const keys = [...new Set([...Object.keys(a), ...Object.keys(b)])];
    return keys.flatMap((key) => linesOf([...path, key], a[key], b[key], here, there));
  }
  const areRecords = [a, b].every((list) => Array.isArray(list) && list.some(isFields));
  if (areRecords && (a as unknown[]).length === (b as unknown[]).length) {
    return (a as unknown[]).flatMap((item, i) => linesOf([...path, String(i)], item, (b as unknown[])[i], here, there));
  }
  const key = lastOf(path);
  const texts = [valueInWords(key, a, here, here), valueInWords(key, b, there, here)] as const;
  const areAlike = texts[0] === texts[1];
  return [{ label: labelOf(path), here: texts[0], there: areAlike ? `${texts[1]}, but not the same` : texts[1] }];
}

const isIndex = (key: string): boolean => /^\d+$/u.test(key);

/** The field within the path. */
const lastOf = (path: readonly string[]): string => path.findLast((key) => !isIndex(key)) ?? '';

/** "End A, against": of what stands in one of several, in which. */
function labelOf(path: readonly string[]): string {
  const last = lastOf(path);
  const own = LABELS[last] ?? last.replaceAll(/(?=[A-Z])/gu, ' ').toLowerCase();
  const at = path.findLastIndex(isIndex);
  if (at < 1 || at === path.length - 1) return capital(own);
  const [list, index] = [path[at - 1]!, Number(path[at])];
  const which = list === 'ends' ? `end ${'AB'[index]}` : `${SINGULAR[list] ?? list} ${index + 1}`;
  return `${capital(which)}, ${own}`;
}

const LABELS: Readonly<Record<string, string>> = {
  at: 'place',
  by: 'comes of',
  from: 'from',
  to: 'to',
  path: 'runs through',
  sigma: 'give or take',
  excluded: 'left out',
  mirror: 'its twin on the other side',
  fit: 'how it is cut',
  cutBy: 'cut by',
  clampOffset: 'clamp before the bend',
  greatestAngle: 'greatest bend',
  greatestOffSquare: 'most off square',
  nth: 'which time',
  done: 'steps done',
  bends: 'bends read',
  checks: 'check dimensions',
  held: 'as it was cut',
  on: 'on',
  sum: 'picture',
  as: 'figures then',
};

const SINGULAR: Readonly<Record<string, string>> = {
  bends: 'reading',
  checks: 'check',
  holes: 'hole',
  between: 'leg',
  seat: 'place',
  order: 'step',
  gaps: 'gap',
  cuts: 'part',
  saws: 'saw',
  notchers: 'notcher',
  extras: 'line',
};

const set = (text: string): ReadonlySet<string> => new Set(text.split(' '));
const ANGLES = set(
  'angle angles pulled net rotation rotations greatestAngle levelStep wheelStep pullStep greatestOffSquare benchSaw step',
);
const COUNTS = set(
  'bend nth count number overhead margin hours paid amount hourly cost fraction direction normal kFactor minutes prices every weldMetre straightCut cope footCut bending tubeFitting jointFitting bendFitting footMaking footKilogram boltEach sawEach percent massFrom massUpTo least most aim',
);

const IN_LISTS: Readonly<Record<string, readonly NamedList[]>> = {
  path: ['nodes'],
  node: ['nodes'],
  nodes: ['nodes'],
  corner: ['nodes'],
  line: ['nodes'],
  from: ['points', 'nodes'],
  to: ['points'],
  and: ['points'],
  point: ['points'],
  points: ['points'],
  helmetTop: ['points'],
  eye: ['points'],
  shoulders: ['points'],
  member: ['members'],
  tube: ['members'],
  tubes: ['members'],
  against: ['members'],
  with: ['members'],
  cutBy: ['members'],
  foot: ['feet'],
  section: ['sections'],
  die: ['dies'],
  scan: ['scans'],
};

/** What stands in the field, as a person reads it. */
export function valueInWords(key: string, value: unknown, job: Job, { lengthUnit: unit }: Job): string {
  const length = (mm: number): string => exactText(mm, unit);
  if (value === undefined) return 'not given';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number') {
    if (ANGLES.has(key)) return `${figure(value)}°`;
    if (COUNTS.has(key)) return figure(value);
    return key === 'carMass' ? totalMassInWords(value, unit) : `${length(value)} ${unit}`;
  }
  if (typeof value === 'string') return value === '' ? 'nothing' : nameIn(key, value, job);
  if (!Array.isArray(value)) return 'given';
  if (value.length === 0) return 'none';
  if (value.every((each) => typeof each === 'string')) return listed(value.map((each) => nameIn(key, each, job)));
  if (!value.every((each) => typeof each === 'number')) return `${value.length} in all`;
  const plain = COUNTS.has(key) || ANGLES.has(key);
  const figures = value.map((each) => (plain ? figure(each) : length(each))).join(', ');
  return ANGLES.has(key) ? `${figures} degrees` : plain ? figures : `${figures} ${unit}`;
}

/** The name of what the text is the id of; the text itself where it is none. */
function nameIn(key: string, text: string, job: Job): string {
  if (key === 'material') return steelOf(text)?.name ?? shownName(text);
  const id = bareId(text);
  for (const list of IN_LISTS[key] ?? []) {
    const record = job[list].find((each) => each.id === id);
    if (record !== undefined) return `${shownName(record.name)}${isPrimed(text) ? ', mirrored' : ''}`;
  }
  return shownName(text);
}
