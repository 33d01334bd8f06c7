/**
 * The edge of an end's cut, its rim: the curve of trims rolled back onto the tube, as trims at ascending degrees about the end. On a line that no
 * cutter reaches the wall stands down to the tip.
 *
 * It goes through the 360 trims, the exact lows and high between them, the exact places where the curve ends beside lines
 * that nothing reaches, and the valleys between two cutters, where the trims on both sides run on straight to. It stands at most some
 * hundredths of a millimetre off the true curve, towards more tube where the curve is a hollow (docs/maths/gaps.md).
 */
import { toDegrees } from '../geometry/angle.ts';
import { GENERATORS } from '../geometry/sleeve.ts';
import { edgeBetween } from '../solve/end-cutter.ts';
import type { OutsideEnd } from './outside.ts';

/** Degrees about the end, ascending, and the trim at each, mm from the node along the tube. */
export interface Rim {
  readonly degrees: readonly number[];
  readonly trims: readonly number[];
}

/** The rim of an end; worked out once an end. */
export const rimOf = (end: OutsideEnd): Rim => (end.edge.rim ??= laidOut(end));

function laidOut(end: OutsideEnd): Rim {
  const { cuts, outer } = end.end;
  const trims: number[] = [];
  const { tip, room } = end;
  for (let k = 0; k < GENERATORS; k++) {
    const s = outer[k]!;
    trims.push(Number.isNaN(s) ? tip : s < room ? s : room);
  }
  return cuts.length === 0 ? { degrees: WHOLE_DEGREES, trims } : merged(trims, betweenDegrees(end, trims));
}

const WHOLE_DEGREES = Array.from({ length: GENERATORS }, (_, k) => k);

/** A place of a rim. */
interface RimPlace {
  readonly degrees: number;
  readonly trim: number;
}

/** Degrees. No two places of a rim stand nearer to one another than this, but for the two ends of a step. */
const APART = 0.001;
/** mm a degree: a turn of slope sharper than this, upwards, is a valley between two cutters. */
const VALLEY = 0.15;

/** Its places between the whole degrees, ascending; of a step first the one on the side that it begins at. */
function betweenDegrees(end: OutsideEnd, trims: readonly number[]): readonly RimPlace[] {
  const { end: cut, tip, room } = end;
  const found: RimPlace[] = [];
  const add = (degrees: number, trim: number) => void found.push({ degrees: (degrees + 360) % 360, trim });
  const kept = (s: number): number => (Number.isNaN(s) ? tip : Math.min(s, room));
  for (const { phi, s } of cut.high === null ? cut.lows : [...cut.lows, cut.high]) add(toDegrees(phi), kept(s));
  let isHere = !Number.isNaN(cut.outer[0]!);
  let here = trims[0]!;
  let there = trims[1]!;
  let down = here - trims[GENERATORS - 1]!;
  for (let k = 0; k < GENERATORS; k++) {
    const isThere = !Number.isNaN(cut.outer[k + 1 < GENERATORS ? k + 1 : 0]!);
    const beyond = trims[k + 2 < GENERATORS ? k + 2 : k + 2 - GENERATORS]!;
    const up = beyond - there;
    if (isHere !== isThere) {
      const [reached, passed] = (isHere ? [k, k + 1] : [k + 1, k]).map((each) => (each * Math.PI) / 180);
      const { phi, s } = edgeBetween(cut.cutter, [end.radius], reached!, passed!);
      const step = [kept(s), tip];
      for (const trim of isHere ? step : step.toReversed()) add(toDegrees(phi), trim);
    } else if (isHere && up - down >= VALLEY) {
      // Run on straight from both sides, the curve has a low between this degree and the next.
      const share = (there - here - up) / (down - up);
      if (share > APART && share < 1 - APART) add(k + share, here + share * down);
    }
    down = there - here;
    isHere = isThere;
    here = there;
    there = beyond;
  }
  // Equals stay in the order in which they came.
  return found.toSorted((a, b) => a.degrees - b.degrees);
}

function merged(whole: readonly number[], extra: readonly RimPlace[]): Rim {
  const degrees: number[] = [];
  const trims: number[] = [];
  let next = 0;
  for (let k = 0; k <= GENERATORS; k++) {
    for (; next < extra.length && extra[next]!.degrees < k; next++) {
      degrees.push(extra[next]!.degrees);
      trims.push(extra[next]!.trim);
    }
    if (k === GENERATORS) break;
    degrees.push(k);
    trims.push(whole[k]!);
  }
  return { degrees, trims };
}

/** Whether the rim lies everywhere beyond s, mm from the node, between so many degrees less than `middle` and so many more. */
export function isBeyond(rim: Rim, s: number, middle: number, reach: number): boolean {
  // Between its places the rim runs straight: it is nowhere lower than at these, or where the stretch begins and ends.
  if (trimAt(rim, middle - reach) <= s || trimAt(rim, middle + reach) <= s) return false;
  const { degrees, trims } = rim;
  const last = lastUpTo(degrees, turned(middle + reach));
  for (let k = lastUpTo(degrees, turned(middle - reach)); k !== last;) {
    k = k + 1 < degrees.length ? k + 1 : 0;
    if (trims[k]! <= s) return false;
  }
  return true;
}

/** mm from the node along the tube at which the wall begins, so many degrees about the end, from -360 to 720. */
export function trimAt({ degrees, trims }: Rim, about: number): number {
  const at = turned(about);
  const low = lastUpTo(degrees, at);
  const after = low + 1 < degrees.length ? low + 1 : 0;
  const width = (after === 0 ? 360 : degrees[after]!) - degrees[low]!;
  const share = width > 0 ? (at - degrees[low]!) / width : 0;
  return trims[low]! + share * (trims[after]! - trims[low]!);
}

const turned = (degrees: number): number => (degrees < 0 ? degrees + 360 : degrees >= 360 ? degrees - 360 : degrees);

/** Which of the ascending numbers is the last that is no more than `most`; the first where none is. */
function lastUpTo(ascending: readonly number[], most: number): number {
  // There is one at every whole degree, and a few between.
  let low = Math.min(Math.floor(most), ascending.length - 1);
  while (low + 1 < ascending.length && ascending[low + 1]! <= most) low++;
  return low;
}
