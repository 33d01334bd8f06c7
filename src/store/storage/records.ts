/**
 * What comes back from the browser's store, checked before it is trusted: it may have been written by another build, cut
 * off, or spoilt. A station or a file name that is none is put right, since no work is in it; anything else that is not as
 * it was written makes the record unsound. Whether the text is a job, and the history one of that job, is for the door for
 * files to judge.
 */
import * as v from 'valibot';
import type { Damaged, Jotted, JottedShop, KeptShop, KeptVersion, Stamp, Stored } from './persistence.ts';
import type { Station } from '../types.ts';

export type Checked<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly why: string };

export const STATION_NAMES: readonly Station[] = ['survey', 'frame', 'checks', 'shop', 'stock'];

/** Milliseconds: no date lies beyond it. */
export const LAST_DATE = 8.64e15;

const date = v.pipe(
  v.number('its date is missing'),
  v.minValue(0, 'its date is none'),
  v.maxValue(LAST_DATE, 'its date is none'),
);

const name = v.string('its name is missing');
const text = v.string('its text is missing');

const stamp = v.object(
  {
    tab: v.string('the mark of who wrote it is damaged'),
    count: v.pipe(
      v.number('the mark of who wrote it is damaged'),
      v.safeInteger('the mark of who wrote it is damaged'),
      v.minValue(0, 'the mark of who wrote it is damaged'),
    ),
  },
  'the mark of who wrote it is missing',
);

const kept = v.object(
  {
    slot: v.string('its place is missing'),
    name,
    text,
    history: v.optional(v.unknown(), null),
    fileName: v.fallback(v.string(), ''),
    station: v.fallback(v.picklist(STATION_NAMES), 'frame'),
    savedAt: date,
  },
  'there is no job in it',
);

const stored = v.object({ kept, stamp }, 'there is nothing in it');

const jotted = v.object({ kept, tab: stamp.entries.tab, seen: stamp.entries.count }, 'there is nothing in it');

const version = v.object(
  { savedAt: date, name, text, slot: v.exactOptional(v.string('its place is damaged')) },
  'there is nothing in it',
);

const keptShop = v.object(
  { text, savedAt: date, entered: v.exactOptional(v.fallback(v.array(v.string()), [])) },
  'there is no shop record in it',
);

const jottedShop = v.object({ base: text, own: text }, 'there is no shop record in it');

const damaged = v.object({ savedAt: date, name, text, why: v.string() });

/** The document that was found in the slot. */
export function checkStored(found: unknown, slot: unknown): Checked<Stored> {
  const checked = check(stored, found);
  return checked.ok && checked.value.kept.slot !== slot ? { ok: false, why: 'it lies in the wrong place' } : checked;
}

export const checkJotted = (found: unknown): Checked<Jotted> => check(jotted, found);

export const checkVersion = (found: unknown): Checked<KeptVersion> => check(version, found);

export const checkKeptShop = (found: unknown): Checked<KeptShop> => check(keptShop, found);

export const checkJottedShop = (found: unknown): Checked<JottedShop> => check(jottedShop, found);

export const isStamp = (found: unknown): found is Stamp => v.is(stamp, found);

export const isDamaged = (found: unknown): found is Damaged => v.is(damaged, found);

function check<T>(schema: v.GenericSchema<unknown, T>, found: unknown): Checked<T> {
  const { success, output, issues } = v.safeParse(schema, found, { abortEarly: true });
  return success ? { ok: true, value: output } : { ok: false, why: issues[0].message };
}

/** What is kept of an unsound document or version: its text if it has one, else all that was found; its date if it has one, else `now`. */
export function damagedFrom(found: unknown, why: string, now: number): Damaged {
  const inner = fieldOf(found, 'kept') ?? found;
  const [itsName, itsText, itsDate] = [fieldOf(inner, 'name'), fieldOf(inner, 'text'), fieldOf(inner, 'savedAt')];
  return {
    savedAt: v.is(date, itsDate) ? itsDate : now,
    name: typeof itsName === 'string' && itsName !== '' ? itsName : 'No name',
    text: typeof itsText === 'string' ? itsText : written(found),
    why,
  };
}

const fieldOf = (value: unknown, field: string): unknown =>
  typeof value === 'object' && value !== null ? (value as Record<string, unknown>)[field] : undefined;

/** As JSON where it can be written so; a database also holds what cannot, such as rings and big integers. */
function written(found: unknown): string {
  try {
    return JSON.stringify(found, null, 2) ?? String(found);
  } catch {
    return String(found);
  }
}
