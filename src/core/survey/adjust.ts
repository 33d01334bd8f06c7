/**
 * The survey: measurements -> places of the measured points, how sure each is, and which readings do not agree. Nothing is thrown away:
 * what is suspected still counts until a person leaves it out. Typed points are exact.
 *
 * Deviations come of those of the readings alone, not of how well they happen to agree. A reading is suspected by what is left over of it in
 * its own deviation (Baarda, A testing procedure for use in geodetic networks, 1968): the worst goes, all is solved anew, until none is worse than
 * chance makes it once in fifty surveys. Where two would explain as much, neither is better than the other: both are named. docs/maths/survey.md.
 */
import { toDegrees, toRadians, type Degrees } from '../geometry/angle.ts';
import { symmetricEigen } from '../numerics/symmetric-eigen.ts';
import { tailQuantile } from '../numerics/normal-tail.ts';
import type { Vec3 } from '../geometry/vector.ts';
import type { SurveyBlock } from '../job/kinds/survey.ts';
import { remembered } from '../remembered.ts';
import type { PointId } from '../job/reference.ts';
import { networkOf, placeIn, rowsAt, slotsOf, type Network, type Row, type Surveyed, sidesAt } from './network.ts';
import { type Solution, solve } from './solve.ts';
import { poseOf, turnsOf } from './floor.ts';
import { settle, TOUCHED } from './settle.ts';

export interface AdjustedPoint {
  readonly id: PointId;
  /** mm, car axes. */
  readonly position: Vec3;
  /** mm along x, y and z, one standard deviation; 0 of what is held; null where nothing fixes it. */
  readonly sigma: readonly [number | null, number | null, number | null];
  /** mm2, of x, y and z together, without what nothing fixes: rows. */
  readonly covariance: readonly [Vec3, Vec3, Vec3];
}

export interface Residual {
  /** In the job's list of measurements. */
  readonly index: number;
  /** Computed less measured; mm, or degrees. */
  readonly residual: number;
  /** In the deviation of the residual itself; 0 where nothing checks the reading. */
  readonly standardised: number;
  /** Share of an error of the reading that shows in its residual: 0, nothing checks it, to 1. */
  readonly share: number;
}

export interface Suspect {
  readonly index: number;
  /** What the others say that it should read, with all suspects left out; mm, or degrees. */
  readonly fits: number;
  /** Of the difference between that and what a right reading would read. */
  readonly deviation: number;
  /** Readings that would explain as much, were they the wrong ones. */
  readonly or: readonly number[];
}

export interface Loose {
  readonly point: PointId;
  /** Unit vector; its component of largest size is positive. */
  readonly direction: Vec3;
}

export interface Adjusted {
  /** Of the measured points, in the job's order. */
  readonly points: readonly AdjustedPoint[];
  /** Of all measurements that are not left out, in their order. */
  readonly residuals: readonly Residual[];
  /** Root of the sum of squares of residuals in their deviations over the redundancy: 1 where readings agree as well as they claim. 0 without redundancy. */
  readonly s0: number;
  /** Measurements less what they had to fix. */
  readonly redundancy: number;
  /** Worst first. */
  readonly suspects: readonly Suspect[];
  /** What nothing fixes: the point stays as guessed along that direction. */
  readonly loose: readonly Loose[];
  /** How the car stands over the floor's lines; only where it is said to stand askew. */
  readonly stands?: Standing;
}

export interface Standing {
  /** Degrees from the floor's lines to the car's axes, right-hand: yaw about up, then pitch about left, then roll about forward. Nose to the left, nose down and right side down are positive. */
  readonly turns: readonly [Degrees, Degrees, Degrees];
  /** Where the car's zero lies over the lines, mm. */
  readonly zero: Vec3;
}

/** Of an error that shows in a residual: less, and nothing checks the reading. */
const UNCHECKED = 1e-8;

/** Never is a reading suspected that is off by less: once in a thousand by chance. */
const LEAST_SUSPECT = 3.29;

/** That a survey without an error names one. */
const BY_CHANCE = 0.02;

/** In deviations squared: the odds that one reading is wrong and not another are then some fifty to one. */
const AS_MUCH = 7.8;

/** Null where no point's place comes of measurements, and nothing was measured. The order of the measurements makes no difference. */
export const adjust = ({ points, holds, measurements, survey }: Surveyed): Adjusted | null =>
  known(points)(holds)(measurements)(survey ?? NO_BLOCK).adjusted;

const NO_BLOCK: SurveyBlock = {};

/** An edit that leaves points and readings alone leaves the survey the very same. */
const known = remembered((points: Surveyed['points']) =>
  remembered((holds: Surveyed['holds']) =>
    remembered((measurements: Surveyed['measurements']) =>
      remembered((survey: SurveyBlock) => ({ adjusted: adjustedFrom({ points, holds, measurements, survey }) })),
    ),
  ),
);

function adjustedFrom(surveyed: Surveyed): Adjusted | null {
  const guessed = networkOf(surveyed);
  if (guessed === null) return null;
  const used = guessed.measurements.flatMap(({ excluded }, index) => (excluded ? [] : [index]));
  const network = guessed.pose === null ? guessed : withCarsSides(guessed, used);
  const solution = settle(network, used);
  const inverse = solution.normal.inverse();
  const residuals = residualsOf(solution, inverse);
  const redundancy = used.length - solution.normal.rank;
  return {
    points: pointsOf(network, solution, inverse),
    residuals,
    s0: redundancy > 0 ? Math.sqrt(solution.squares / redundancy) : 0,
    redundancy,
    suspects: suspectsAmong(network, solution, residuals),
    loose: looseOf(network, solution),
    ...(network.pose !== null && { stands: standingOf(solution.places.subarray(network.pose)) }),
  };
}

/** Guesses lie over the floor's lines. On which side of the car's own centre plane a point is, which a width is taken on, is seen once the car is laid out without widths. */
function withCarsSides(network: Network, used: readonly number[]): Network {
  const others = used.filter((index) => network.measurements[index]!.kind !== 'width');
  if (others.length === used.length) return network;
  return { ...network, side: sidesAt(network.first, settle(network, others).places) };
}

function standingOf(pose: Float64Array): Standing {
  const [yaw, pitch, roll] = turnsOf(pose);
  return { turns: [toDegrees(yaw), toDegrees(pitch), toDegrees(roll)], zero: [pose[3]!, pose[4]!, pose[5]!] };
}

/** All coordinates of the network as they were worked out. */
export function placesOf(network: Network, { points, stands }: Adjusted): Float64Array {
  const places = network.guess.slice();
  for (const { id, position } of points) places.set(position, network.first.get(id));
  if (network.pose !== null && stands !== undefined) {
    places.set(poseOf(stands.turns.map(toRadians), stands.zero), network.pose);
  }
  return places;
}

function pointsOf(network: Network, { places, normal }: Solution, inverse: Float64Array): readonly AdjustedPoint[] {
  const { of, sign } = slotsOf(network, network.unknown);
  const at = placeIn(network, places);
  return network.asked.map(({ id }): AdjustedPoint => {
    const first = network.first.get(id)!;
    const own = [0, 1, 2].map((k) => of[first + k]!);
    const covariance = own.map((i, a) =>
      own.map((k, b) => (i < 0 || k < 0 ? 0 : sign[first + a]! * sign[first + b]! * inverse[i * normal.size + k]!)),
    );
    const sigma = own.map((i, k) => {
      if (i >= 0 && normal.open.some((way) => Math.abs(way[i]!) > TOUCHED)) return null;
      return Math.sqrt(covariance[k]![k]!);
    });
    return { id, position: at(id), sigma: sigma as never, covariance: covariance as never };
  });
}

/** In the order of the measurements. */
function residualsOf({ rows, normal }: Solution, inverse: Float64Array): readonly Residual[] {
  return rows.map((row): Residual => {
    const { index, deviation, residual } = row;
    const share = Math.max(0, 1 - varianceOf(row, inverse, normal.size) / (deviation * deviation));
    const isChecked = share > UNCHECKED;
    return {
      index,
      residual,
      standardised: isChecked ? residual / (deviation * Math.sqrt(share)) : 0,
      share: isChecked ? share : 0,
    };
  });
}

/** Of what the places say that it reads. */
function varianceOf({ at, slopes }: Row, inverse: Float64Array, size: number): number {
  let variance = 0;
  for (const [a, i] of at.entries()) {
    for (const [b, k] of at.entries()) variance += slopes[a]! * inverse[i * size + k]! * slopes[b]!;
  }
  return variance;
}

/** The same of a reading that is not among those that the places come of, and may tie what none of these does. */
function varianceBeside({ at, slopes }: Row, { size, solve: solved }: Solution['normal']): number {
  const slope = new Float64Array(size);
  at.forEach((i, k) => (slope[i] = slopes[k]!));
  const along = solved(slope);
  return at.reduce((sum, i, k) => sum + slopes[k]! * along[i]!, 0);
}

/** Beyond it, in its own deviation, one of so many readings is suspected. */
export const suspectLimit = (readings: number): number =>
  Math.max(LEAST_SUSPECT, tailQuantile(BY_CHANCE / 2 / Math.max(readings, 1)));

function suspectsAmong(network: Network, whole: Solution, residuals: readonly Residual[]): readonly Suspect[] {
  const limit = suspectLimit(residuals.length);
  const found: { readonly index: number; readonly or: readonly number[] }[] = [];
  let [solution, left] = [whole, residuals];
  for (;;) {
    const size = ({ standardised }: Residual): number => Math.abs(standardised);
    const most = Math.max(0, ...left.map(size));
    if (!(most > limit)) break;
    const alike = left
      .filter((each) => most ** 2 - size(each) ** 2 < AS_MUCH)
      .toSorted((a, b) => compare(network, a, b));
    const worst = alike[0]!;
    found.push({ index: worst.index, or: alike.slice(1).map(({ index }) => index) });
    const used = left.flatMap(({ index }) => (index === worst.index ? [] : [index]));
    solution = solve(network, used, network.unknown, solution.places);
    left = residualsOf(solution, solution.normal.inverse());
  }
  const rows = rowsAt(
    network,
    found.map(({ index }) => index),
    network.unknown,
    solution.places,
  );
  return found.map(({ index, or }, k) => ({
    index,
    fits: rows[k]!.residual + network.measurements[index]!.value,
    deviation: Math.hypot(rows[k]!.deviation, Math.sqrt(varianceBeside(rows[k]!, solution.normal))),
    or: or.filter((other) => !found.some((each) => each.index === other)),
  }));
}

/** The worst first; where rounding alone decides, by id, so that the order of the lines does not. */
function compare(network: Network, a: Residual, b: Residual): number {
  const by = Math.abs(b.standardised) - Math.abs(a.standardised);
  if (Math.abs(by) > AS_GOOD * Math.abs(a.standardised)) return by;
  return network.measurements[a.index]!.id < network.measurements[b.index]!.id ? -1 : 1;
}

/** Of a standardised residual: as rounding leaves it. */
const AS_GOOD = 1e-6;

/** The directions of each point that what nothing fixes moves it along, the most open first. */
function looseOf(network: Network, { normal }: Solution): readonly Loose[] {
  const { of, sign } = slotsOf(network, network.unknown);
  return network.asked.flatMap(({ id }) => {
    const first = network.first.get(id)!;
    const parts = normal.open.map((way) =>
      [0, 1, 2].map((k) => (of[first + k]! < 0 ? 0 : sign[first + k]! * way[of[first + k]!]!)),
    );
    const spread = [0, 1, 2].map((i) =>
      [0, 1, 2].map((k) => parts.reduce((sum, part) => sum + part[i]! * part[k]!, 0)),
    );
    return symmetricEigen(spread as never as readonly Vec3[])
      .filter(({ value }) => value > TOUCHED ** 2)
      .map(({ vector }): Loose => ({ point: id, direction: vector }));
  });
}
