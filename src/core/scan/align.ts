/**
 * A scan laid by pairs: places picked on it, and the measured points of the car that they are. The rigid motion by which the squared
 * distances of all pairs come to the least (geometry/rigid-motion.ts), every pair counted alike; docs/maths/scan.md.
 */
import { rigidFit } from '../geometry/rigid-motion.ts';
import { add, distance, scale, subtract, type Vec3 } from '../geometry/vector.ts';
import type { Placement, Scan, ScanUnit } from '../job/kinds/scan.ts';
import { symmetricEigen } from '../numerics/symmetric-eigen.ts';
import { inCar, MM_PER, placementOf, placingOf, upright } from './place.ts';

export interface GivenPair {
  /** In the file's own unit and axes. */
  readonly at: Vec3;
  /** The measured point, in the car. */
  readonly goal: Vec3;
}

/** Fewer leave a turn open. */
export const LEAST_PAIRS = 3;

/** Of the spread along their line: places that lie nearer to it do not say how the scan is turned about it. */
const OFF_LINE = 0.02;

export type Aligned =
  | { readonly ok: true; readonly placement: Placement }
  | { readonly ok: false; readonly why: 'few' | 'in-line' };

/** Lays the scan, or says what it wants for that. */
export function align(how: Pick<Scan, 'unit' | 'up'>, pairs: readonly GivenPair[]): Aligned {
  if (pairs.length < LEAST_PAIRS) return { ok: false, why: 'few' };
  const places = pairs.map(({ at }) => upright(how, at));
  const goals = pairs.map(({ goal }) => goal);
  if (inLine(places) || inLine(goals)) return { ok: false, why: 'in-line' };
  return { ok: true, placement: placementOf(rigidFit(places, goals)) };
}

/** The mean squares of the distances from their centroid along the axes in which these are extreme, the greatest first; mm². */
function spreads(places: readonly Vec3[]): readonly number[] {
  const middle = scale(places.reduce(add), 1 / places.length);
  const arms = places.map((place) => subtract(place, middle));
  const product = (i: 0 | 1 | 2, k: 0 | 1 | 2): number =>
    arms.reduce((sum, arm) => sum + arm[i] * arm[k], 0) / arms.length;
  const row = (i: 0 | 1 | 2): Vec3 => [product(i, 0), product(i, 1), product(i, 2)];
  return symmetricEigen([row(0), row(1), row(2)]).map(({ value }) => value);
}

const inLine = (places: readonly Vec3[]): boolean => {
  const [along, across] = spreads(places);
  return across! <= OFF_LINE ** 2 * along!;
};

export interface Residuals {
  /** Pair by pair, mm from the place on the scan as it lies to the measured point. */
  readonly distances: readonly number[];
  /** Root of the mean square, mm. */
  readonly rms: number;
  /** The pair without which the others fit best: one that was picked wrong draws its neighbours off too. Of three pairs the one that is farthest off. */
  readonly worst: number;
  /** mm: the root mean square of the others, laid without it; null where they are too few, or lie in a line. */
  readonly withoutWorst: number | null;
}

/** How the pairs fit as the scan lies now; at least one pair. */
export function residualsOf(scan: Pick<Scan, 'unit' | 'up' | 'placement'>, pairs: readonly GivenPair[]): Residuals {
  const distances = distancesOf(scan, pairs);
  const left = pairs.map((_, i) => leftOf(scan, pairs.toSpliced(i, 1)));
  const least = Math.min(...left.filter((each) => each !== null));
  const worst = left.some((each) => each !== null) ? left.indexOf(least) : distances.indexOf(Math.max(...distances));
  return { distances, rms: meanRoot(distances), worst, withoutWorst: left[worst]! };
}

const distancesOf = (scan: Pick<Scan, 'unit' | 'up' | 'placement'>, pairs: readonly GivenPair[]): readonly number[] => {
  const placing = placingOf(scan);
  return pairs.map(({ at, goal }) => distance(inCar(placing, at), goal));
};

/** mm: what these come to when the scan is laid by them alone; null where they do not lay it. */
function leftOf(how: Pick<Scan, 'unit' | 'up'>, pairs: readonly GivenPair[]): number | null {
  const laid = align(how, pairs);
  return laid.ok ? meanRoot(distancesOf({ ...how, placement: laid.placement }, pairs)) : null;
}

const meanRoot = (each: readonly number[]): number =>
  Math.sqrt(each.reduce((sum, one) => sum + one * one, 0) / each.length);

export interface SizeHint {
  /** How many times as large the scan measures as the tape does. */
  readonly ratio: number;
  /** The unit in which both would agree; null where none does. */
  readonly unit: ScanUnit | null;
}

/** A tape and a scanner agree better than this. */
const SIZES_AGREE = 0.02;

/**
 * Whether scan and tape are of one size: the spread of the places on the scan by that of the measured points, which no turn changes (Horn
 * 1987, the scale that treats both alike). Null where they agree, and where there is one pair or none.
 */
export function sizeHint(how: Pick<Scan, 'unit' | 'up'>, pairs: readonly GivenPair[]): SizeHint | null {
  if (pairs.length < 2) return null;
  const sum = (places: readonly Vec3[]): number =>
    spreads(places).reduce((total, each) => total + Math.max(0, each), 0);
  const [scanned, taped] = [sum(pairs.map(({ at }) => upright(how, at))), sum(pairs.map(({ goal }) => goal))];
  if (scanned === 0 || taped === 0) return null;
  const ratio = Math.sqrt(scanned / taped);
  const agrees = (unit: ScanUnit): boolean => Math.abs((ratio * MM_PER[unit]) / MM_PER[how.unit] - 1) <= SIZES_AGREE;
  if (agrees(how.unit)) return null;
  return { ratio, unit: (Object.keys(MM_PER) as ScanUnit[]).find(agrees) ?? null };
}
