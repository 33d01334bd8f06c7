/**
 * The low of a cut's curve between two of its places. It is closed in on by the sign of the slope, not by the values: at
 * a crossing ds/dphi = -around / ahead (fan.ts), and `around` stays finite and steady where the slope itself is endless (a
 * line that only touches) or jumps (equal tubes). So one search finds smooth lows, the corners of equal tubes and those
 * where one surface takes over from another. Where the curve is torn, at lines that pass by or where another crossing becomes
 * the nearest, it closes in on the tear, and the curve's end there counts.
 */
import { wrapHalfTurn, type Radians } from './angle.ts';
import type { Leaving } from './fan.ts';
import type { MetSleeve } from './met-sleeve.ts';
import { leavingAt, trimAt } from './sleeve.ts';

/** A place of the curve: phi in (-pi, pi], s in mm. */
export interface RimPlace {
  readonly phi: Radians;
  readonly s: number;
}

/** Of lows this near in s rounding alone chooses, mm: the one nearest phi = 0 is taken. */
export const ROUNDED = 1e-9;
/** A stretch within the surface as short as this, mm, may be rounding's: its middle, where the line touches, is the better place. */
const TOUCH = 1e-5;
/** A line that passes outside within rounding counts as touching; one that truly goes in is within for longer than this, mm. */
const WITHIN = 1e-9;
/** What is left to gain when a search ends, mm. */
const GAIN = 1e-11;

/**
 * Where the curve ends between a phi that a surface is reached at and one that none is, a degree on at most. The crossing there
 * is where the line touches, unless the line goes on to another place of the surface.
 */
export const edgeOf = (met: readonly MetSleeve[], reached: Radians, passed: Radians): RimPlace =>
  placeOf(edgeSample(met, sampleAt(met, reached, NaN)!, passed));

/** The curve at one phi, and the number of the sleeve that it is by. */
export interface Sample extends Leaving {
  readonly phi: Radians;
  readonly by: number;
}

/** 1 to look for lows; -1 for highs, which are lows upside down. */
export type Sense = 1 | -1;

/** Where the curve lies there; where the line only touches, where it first does. */
export const placeOf = ({ phi, s, half }: Sample): RimPlace => ({
  phi: wrapHalfTurn(phi),
  s: half < TOUCH ? s - half : s,
});

/**
 * The low between two places, or the lower of them where the curve only falls from one to the other. Where one surface takes over
 * between them from another, it is on either side of that, or there if both lead down to it.
 */
export function lowBetween(met: readonly MetSleeve[], sense: Sense, a: Sample, b: Sample): Sample {
  const over = a.by === b.by ? null : takeover(met, a, b);
  if (over === null) return lowOf(met, sense, a, b);
  const [from, to] = [sampleOn(met, a.by, over[0], a.s)!, sampleOn(met, b.by, over[1], b.s)!];
  const most = sampleAt(met, over[0], from.s)!;
  // A third surface stands out there.
  if (most.by !== a.by && most.by !== b.by && most.s > Math.max(from.s, to.s) + ROUNDED)
    return lower(lowBetween(met, sense, a, most), lowBetween(met, sense, most, b), sense);
  return lower(lowOf(met, sense, a, from), lowOf(met, sense, to, b), sense);
}

/**
 * The last phi that the first of two places' runs stands out at, and the first that the second's does: the same, unless one of the
 * two is torn there. Null where one is not met all the way.
 */
function takeover(met: readonly MetSleeve[], a: Sample, b: Sample): readonly [Radians, Radians] | null {
  const apart = (phi: Radians): number => trimAt(met[a.by]!, phi, a.s) - trimAt(met[b.by]!, phi, b.s);
  let [left, right] = [a.phi, b.phi];
  let [atLeft, atRight] = [apart(left), apart(right)];
  let next = secant(left, atLeft, right, atRight);
  let slow = 0;
  while (atLeft >= 0 && atRight <= 0) {
    const half = (left + right) / 2;
    const phi = slow < 3 && next > left && next < right ? next : half;
    if (!(phi > left && phi < right)) return [left, right];
    const here = apart(phi);
    if (Math.abs(here) < GAIN) return [phi, phi];
    const width = right - left;
    next = here > 0 ? secant(phi, here, left, atLeft) : secant(phi, here, right, atRight);
    if (here > 0) [left, atLeft] = [phi, here];
    else [right, atRight] = [phi, here];
    slow = right - left > width / 2 ? slow + 1 : 0;
  }
  return null;
}

/**
 * The same by the slope's sign, which changes at a low: by secants through the last two places on one side of it, since a
 * corner is as steep as it likes on either side. Where these are slow the stretch is halved.
 */
function lowOf(met: readonly MetSleeve[], sense: Sense, a: Sample, b: Sample): Sample {
  let best = lower(a, b, sense);
  let [left, right] = [a, b];
  let next = secant(left.phi, riseAt(left, sense), right.phi, riseAt(right, sense));
  let slow = 0;
  let touched = false;
  while (leadsDown(left, right, sense) && leadsDown(right, left, sense)) {
    const half = (left.phi + right.phi) / 2;
    const phi = slow < 3 && next > left.phi && next < right.phi ? next : half;
    if (!(phi > left.phi && phi < right.phi)) break;
    const c = sampleAt(met, phi, best.s);
    // A gap in the curve, narrower than a degree.
    if (c === null) return lower(edgeSample(met, left, phi), edgeSample(met, right, phi), sense);
    best = lower(best, c, sense);
    const width = right.phi - left.phi;
    const rise = riseAt(c, sense);
    const toLeft = rise > 0 ? leadsDown(left, c, sense) : !leadsDown(right, c, sense);
    const last = toLeft ? right : left;
    next = secant(phi, rise, last.phi, riseAt(last, sense));
    if (toLeft) right = c;
    else left = c;
    // Close enough; at a corner, where the line only touches, the next secant is.
    if (touched || (next > left.phi && next < right.phi && Math.abs(rise * (next - phi)) <= GAIN * c.ahead)) break;
    touched = c.half < TOUCH;
    slow = right.phi - left.phi > width / 2 ? slow + 1 : 0;
  }
  return best;
}

/** Where the straight line through two places is 0. */
const secant = (x: number, y: number, otherX: number, otherY: number): number => x - (y * (otherX - x)) / (otherY - y);

/** How steeply the curve rises about the tube, mm a radian; upside down for highs. */
export const riseAt = ({ around }: Sample, sense: Sense): number => -sense * around;

const lower = (a: Sample, b: Sample, sense: Sense): Sample => (sense * b.s < sense * a.s ? b : a);

/** Whether a low lies from here towards there, if `there` leads down to it too. */
const leadsDown = (here: Sample, there: Sample, sense: Sense): boolean =>
  (there.phi > here.phi ? riseAt(here, sense) < 0 : riseAt(here, sense) > 0) || sense * (here.s - there.s) >= 0;

/** The last place before the curve's end, to the last digit. */
export function edgeSample(met: readonly MetSleeve[], reached: Sample, passed: Radians): Sample {
  let last = reached;
  let beyond = passed;
  for (;;) {
    const phi = (last.phi + beyond) / 2;
    if (phi === last.phi || phi === beyond) return last;
    const sample = sampleAt(met, phi, last.s);
    if (sample === null || sample.half < WITHIN) beyond = phi;
    else last = sample;
  }
}

/** `near` saves steps where it is about the s that is sought; see trimAt. */
export function sampleAt(met: readonly MetSleeve[], phi: Radians, near: number): Sample | null {
  let by = 0;
  let most = NaN;
  for (let i = 0; met.length > 1 && i < met.length; i++) {
    const s = trimAt(met[i]!, phi, near);
    if (Number.isNaN(s) || s <= most) continue;
    most = s;
    by = i;
  }
  return sampleOn(met, by, phi, near);
}

function sampleOn(met: readonly MetSleeve[], by: number, phi: Radians, near: number): Sample | null {
  const leaving = leavingAt(met[by]!, phi, near);
  return leaving === null ? null : sampleOf(phi, by, leaving);
}

/** The curve at `phi`, by the sleeve of number `by`, from where the line leaves it. */
export const sampleOf = (phi: Radians, by: number, { s, ahead, around, half }: Leaving): Sample => ({
  phi,
  by,
  s,
  ahead,
  around,
  half,
});
