/** What was measured, by the word that the shop has for it; what each means; and which words a spreadsheet may have for it. */
import type { MeasurementKind } from '../job/kinds/measurement.ts';
import { WAYS, type Way } from '../survey/ways.ts';
import type { Axis, Vec3 } from '../geometry/vector.ts';

export const WAY_WORDS: Readonly<Record<Way, string>> = {
  distance: 'Distance',
  height: 'Height',
  offset: 'Offset',
  station: 'Station',
  width: 'Width',
  level: 'Level difference',
  slope: 'Slope',
  plumb: 'Plumb',
};

/** What an instrument reads, by kind of reading. */
export const KIND_WORDS: Readonly<Record<MeasurementKind, string>> = {
  distance: 'distances',
  coordinate: 'stations, offsets, heights',
  width: 'widths',
  difference: 'level and plumb',
  inclination: 'slopes',
};

/** What to hold where, and which way is plus. */
export const WAY_MEANS: Readonly<Record<Way, string>> = {
  distance: 'Tape from one point straight to the other.',
  height: 'Rule straight up from the floor’s datum.',
  offset: 'From the centreline: plus is left, minus right.',
  station: 'Along the car from the cross line: plus is forward.',
  width: 'Straight across to the same place on the other side: to its own point there, else to its mirror image.',
  level: 'How much higher the second point is than the first.',
  slope: 'Degrees that the second point is above level, seen from the first.',
  plumb: 'The second point hangs straight above or below the first.',
};

const ALSO: Readonly<Record<string, Way>> = {
  tape: 'distance',
  length: 'distance',
  z: 'height',
  y: 'offset',
  x: 'station',
  along: 'station',
  'level diff': 'level',
  level: 'level',
  angle: 'slope',
  inclination: 'slope',
  'plumb line': 'plumb',
};

/** Null where the word is none of them. */
export function wayCalled(word: string): Way | null {
  const called = word.trim().toLowerCase();
  return WAYS.find((way) => WAY_WORDS[way].toLowerCase() === called) ?? ALSO[called] ?? null;
}

/** "higher", "further left", "further back": how the second place differs from the first, along the axis where it does most. */
export function farInWords([x, y, z]: Vec3): string {
  const axis: Axis = Math.abs(z) >= Math.max(Math.abs(x), Math.abs(y)) ? 'z' : Math.abs(y) >= Math.abs(x) ? 'y' : 'x';
  return FAR[axis][{ x, y, z }[axis] > 0 ? 0 : 1];
}

const FAR: Readonly<Record<Axis, readonly [string, string]>> = {
  x: ['further forward', 'further back'],
  y: ['further left', 'further right'],
  z: ['higher', 'lower'],
};
