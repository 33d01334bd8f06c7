/**
 * The lowest and the highest places of a cut's curve, trim s over phi, also between the whole degrees that it is listed at.
 *
 * Beside a low of the listed trims lies one of the curve: rim-search.ts closes in on it. A low between two degrees that the list does
 * not show is a dip that comes and goes within the degree. It begins where a line only touches a bend; these places are
 * solved for (leave-torus.ts), and the curve is searched on both sides. What may still be missed: a dip that begins and ends
 * where two crossings of one line lie equally far from the origin, and lines that reach a surface within one degree alone.
 */
import { wrapHalfTurn, type Radians } from './angle.ts';
import {
  edgeSample,
  lowBetween,
  placeOf,
  riseAt,
  ROUNDED,
  sampleAt,
  sampleOf,
  type RimPlace,
  type Sample,
  type Sense,
} from './rim-search.ts';
import type { MetSleeve } from './met-sleeve.ts';
import { GENERATORS, leavingGenerator, trimOf, winnersNoted, type Trim } from './sleeve.ts';

export interface Extremes {
  /** The least of the curve, and its other lows that are no more than SAME_LOW above it, least first; empty where nothing is reached. */
  readonly lows: readonly RimPlace[];
  /** The greatest of the curve. */
  readonly high: RimPlace | null;
  /** Some whole degree is reached by nothing. */
  readonly passedBy: boolean;
}

/** Lows this near in s are equals, mm. */
export const SAME_LOW = 0.01;
/** Of what lies about a low no farther than this, radians, the lowest place alone counts. */
const DEGREE = Math.PI / 180;
/** How far aside of a touch the curve is looked at, radians: past what rounding takes for touching, at a corner of equal tubes too. */
const CLOSE = 1e-6;
const ASIDE = 1e-4;
/** From a touch the curve leads on to lows and highs by less than this within the degree, mm. */
const LEADS_ON = 10;

type Stretch = readonly [from: Sample, to: Sample];

/** Scratch of one end's search, as in fan.ts. */
const winners = winnersNoted();
const lowsListed = new Uint16Array(GENERATORS);
const highsListed = new Uint16Array(GENERATORS);

/** The trim at whole degrees, and its extremes everywhere. */
export function rimOf(met: readonly MetSleeve[]): Trim & Extremes {
  const whole = trimOf(met, winners);
  return { ...whole, ...extremesOf(met, whole.trim) };
}

function extremesOf(met: readonly MetSleeve[], trim: Float64Array): Extremes {
  let lows = 0;
  let highs = 0;
  let least = -1;
  let greatest = -1;
  let passedBy = false;
  let here = trim[GENERATORS - 1]!;
  let after = trim[0]!;
  // What the curve did on the way here; both where there was none, which is an end of it.
  let fell = true;
  let rose = true;
  for (let k = -1; k < GENERATORS; k++) {
    const falls = !(after >= here);
    const rises = !(after <= here);
    if (k >= 0) {
      if (Number.isNaN(here)) passedBy = true;
      else {
        if (fell && !(after < here)) lowsListed[lows++] = k;
        if (rose && !(after > here)) highsListed[highs++] = k;
        if (least < 0 || here < trim[least]!) least = k;
        if (greatest < 0 || here > trim[greatest]!) greatest = k;
      }
    }
    fell = falls;
    rose = rises;
    here = after;
    after = trim[k + 2 < GENERATORS ? k + 2 : k + 2 - GENERATORS]!;
  }
  if (least < 0) return { lows: [], high: null, passedBy };
  const touched = winners.touched.length === 0 ? [] : stretchesTouched(met, trim, trim[least]!, trim[greatest]!);
  return {
    lows: furthest(met, trim, 1, least, lowsListed.subarray(0, lows), touched),
    high: furthest(met, trim, -1, greatest, highsListed.subarray(0, highs), touched)[0]!,
    passedBy,
  };
}

/**
 * From the degree before to the degree after each place that a line touches a bend at, with places on both sides of it: there
 * the nearest crossing may come and go within one degree. Left out where that leads to no extreme: a single touch, far within.
 */
function stretchesTouched(met: readonly MetSleeve[], trim: Float64Array, least: number, greatest: number): Stretch[] {
  const touched = winners.touched.toSorted((a, b) => a.phi - b.phi);
  const stretches: Stretch[] = [];
  let last = -Infinity;
  for (const { phi, s } of touched) {
    const again = phi - last < ASIDE;
    last = phi;
    if (again) continue;
    const twice = touched.some(
      (other) => Math.abs(other.phi - phi) > ASIDE && Math.floor(other.phi / DEGREE) === Math.floor(phi / DEGREE),
    );
    const [left, right] = [sampleAt(met, phi - ASIDE, NaN), sampleAt(met, phi + ASIDE, NaN)];
    // Two stretches that touch are one: the trim then lies at the end of the second.
    const beside = [s, left?.s ?? s, right?.s ?? s];
    if (!twice && Math.min(...beside) > least + LEADS_ON && Math.max(...beside) < greatest - LEADS_ON) continue;
    const [before, after] = [Math.floor((phi - ASIDE) / DEGREE), Math.ceil((phi + ASIDE) / DEGREE)];
    const places = [
      { at: before * DEGREE, sample: listedAt(met, trim, before) },
      { at: phi - ASIDE, sample: left },
      ...[-CLOSE, CLOSE].map((aside) => ({ at: phi + aside, sample: sampleAt(met, phi + aside, NaN) })),
      { at: phi + ASIDE, sample: right },
      { at: after * DEGREE, sample: listedAt(met, trim, after) },
    ];
    for (let i = 1; i < places.length; i++) {
      const [from, to] = [places[i - 1]!, places[i]!];
      // Where one of the two is met and the other not, the curve ends between them.
      if (from.sample !== null) stretches.push([from.sample, to.sample ?? edgeSample(met, from.sample, to.at)]);
      else if (to.sample !== null) stretches.push([edgeSample(met, to.sample, from.at), to.sample]);
    }
  }
  return stretches;
}

/** All of the furthest that are equals; of those within rounding the one nearest phi = 0 comes first. */
function furthest(
  met: readonly MetSleeve[],
  trim: Float64Array,
  sense: Sense,
  at: number,
  listed: Uint16Array,
  touched: readonly Stretch[],
): RimPlace[] {
  let least = sense * trim[at]!;
  const found: RimPlace[] = [{ phi: degreesIn(at), s: trim[at]! }];
  for (const k of listed) {
    const here = sense * trim[k]!;
    const before = sense * trim[(k + GENERATORS - 1) % GENERATORS]!;
    const after = sense * trim[(k + 1) % GENERATORS]!;
    // On either side a curve goes down no farther than it did from the degree before; twice that leaves room for its bend.
    if (here - 2 * Math.max(before - here, after - here) > least + SAME_LOW) continue;
    for (const low of lowsBeside(met, trim, sense, k)) {
      const place = placeOf(low);
      least = Math.min(least, sense * place.s);
      found.push(place);
    }
  }
  for (const [from, to] of touched) {
    if (Math.min(sense * from.s, sense * to.s) > least + LEADS_ON) continue;
    const place = placeOf(lowBetween(met, sense, from, to));
    least = Math.min(least, sense * place.s);
    found.push(place);
  }
  let first = 0;
  for (let i = 1; i < found.length; i++) {
    const ahead = sense * (found[first]!.s - found[i]!.s);
    const nearer = Math.abs(found[i]!.phi) < Math.abs(found[first]!.phi);
    if (ahead > ROUNDED || (ahead > -ROUNDED && nearer)) first = i;
  }
  const lows: RimPlace[] = [{ phi: found[first]!.phi, s: sense * least }];
  for (const each of found.toSorted((a, b) => sense * (a.s - b.s))) {
    if (sense * each.s > least + SAME_LOW) break;
    if (lows.every(({ phi }) => Math.abs(wrapHalfTurn(each.phi - phi)) > DEGREE)) lows.push(each);
  }
  return lows;
}

const degreesIn = (k: number): Radians => wrapHalfTurn((k * Math.PI) / 180);

/** Beside a listed low: the one on the side that the curve falls to, and where it ends on sides that nothing is reached on. */
function lowsBeside(met: readonly MetSleeve[], trim: Float64Array, sense: Sense, k: number): Sample[] {
  const middle = listedAt(met, trim, k)!;
  const [before, after] = [listedAt(met, trim, k - 1), listedAt(met, trim, k + 1)];
  const edges = [
    ...(before === null ? [edgeSample(met, middle, ((k - 1) * Math.PI) / 180)] : []),
    ...(after === null ? [edgeSample(met, middle, ((k + 1) * Math.PI) / 180)] : []),
  ];
  const low =
    riseAt(middle, sense) > 0
      ? lowBetween(met, sense, before ?? edges.at(0)!, middle)
      : lowBetween(met, sense, middle, after ?? edges.at(-1)!);
  return [...edges, low];
}

function listedAt(met: readonly MetSleeve[], trim: Float64Array, k: number): Sample | null {
  const at = (k + 2 * GENERATORS) % GENERATORS;
  const s = trim[at]!;
  if (Number.isNaN(s)) return null;
  const by = winners.sleeve[at]!;
  return sampleOf((k * Math.PI) / 180, by, leavingGenerator(met[by]!, winners.piece[at]!, at, s));
}
