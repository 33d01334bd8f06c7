/**
 * The survey: measurements -> places of the measured points, how sure each is, and which readings do not agree. Nothing is thrown away:
 * what is suspected still counts until a person leaves it out. Typed points are exact.
 *
 * Deviations come of those of the readings alone, not of how well they happen to agree. A reading is suspected by what is left over of it in
 * its own deviation (Baarda, A testing procedure for use in geodetic networks, 1968): the worst goes, all is solved anew, until none is worse than
 * chance makes it once in fifty surveys. Where two would explain as much, neither is better than the other: both are named. docs/maths/survey.md.
 */
import { symmetricEigen } from '../numerics/symmetric-eigen.ts';
import { tailQuantile } from '../numerics/normal-tail.ts';
import type { Vec3 } from '../geometry/vector.ts';
import { remembered } from '../remembered.ts';
import type { PointId } from '../job/reference.ts';
import { networkOf, placeIn, rowsAt, type Network, type Row, type Solution, type Surveyed } from './network.ts';
import { settle } from './settle.ts';

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
}

/** Of an error that shows in a residual: less, and nothing checks the reading. */
const UNCHECKED = 1e-8;

/** Of a unit direction. */
const TOUCHED = 1e-6;

/** Never is a reading suspected that is off by less: once in a thousand by chance. */
const LEAST_SUSPECT = 3.29;

/** That a survey without an error names one. */
const BY_CHANCE = 0.02;

/** In deviations squared: the odds that one reading is wrong and not another are then some fifty to one. */
const AS_MUCH = 7.8;

/** Null where no point's place comes of measurements, and nothing was measured. The order of the measurements makes no difference. */
export const adjust = ({ points, holds, measurements }: Surveyed): Adjusted | null =>
  known(points)(holds)(measurements).adjusted;

/** An edit that leaves points and readings alone leaves the survey the very same. */
const known = remembered((points: Surveyed['points']) =>
  remembered((holds: Surveyed['holds']) =>
    remembered((measurements: Surveyed['measurements']) => ({
      adjusted: adjustedFrom({ points, holds, measurements }),
    })),
  ),
);

function adjustedFrom(surveyed: Surveyed): Adjusted | null {
  const network = networkOf(surveyed);
  if (network === null) return null;
  const used = network.measurements.flatMap(({ excluded }, index) => (excluded ? [] : [index]));
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
  };
}

function pointsOf(network: Network, { places, normal }: Solution, inverse: Float64Array): readonly AdjustedPoint[] {
  const slots = new Map(network.unknown.map((at, i) => [at, i]));
  const at = placeIn(network, places);
  return network.asked.map(({ id }): AdjustedPoint => {
    const own = [0, 1, 2].map((k) => slots.get(network.first.get(id)! + k));
    const covariance = own.map((i) =>
      own.map((k) => (i === undefined || k === undefined ? 0 : inverse[i * normal.size + k]!)),
    );
    const sigma = own.map((i, k) => {
      if (i !== undefined && normal.open.some((way) => Math.abs(way[i]!) > TOUCHED)) return null;
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

const NO_INVERSE = new Float64Array(0);

function suspectsAmong(network: Network, whole: Solution, residuals: readonly Residual[]): readonly Suspect[] {
  const limit = Math.max(LEAST_SUSPECT, tailQuantile(BY_CHANCE / 2 / Math.max(residuals.length, 1)));
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
    solution = settle(network, used, solution.places);
    left = residualsOf(solution, solution.normal.inverse());
  }
  const inverse = found.length > 0 ? solution.normal.inverse() : NO_INVERSE;
  const rows = rowsAt(
    network,
    found.map(({ index }) => index),
    network.unknown,
    solution.places,
  );
  return found.map(({ index, or }, k) => ({
    index,
    fits: rows[k]!.residual + network.measurements[index]!.value,
    deviation: Math.hypot(rows[k]!.deviation, Math.sqrt(varianceOf(rows[k]!, inverse, solution.normal.size))),
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
  const slots = new Map(network.unknown.map((at, i) => [at, i]));
  return network.asked.flatMap(({ id }) => {
    const parts = normal.open.map((way) =>
      [0, 1, 2].map((k) => {
        const slot = slots.get(network.first.get(id)! + k);
        return slot === undefined ? 0 : way[slot]!;
      }),
    );
    const spread = [0, 1, 2].map((i) =>
      [0, 1, 2].map((k) => parts.reduce((sum, part) => sum + part[i]! * part[k]!, 0)),
    );
    return symmetricEigen(spread as never as readonly Vec3[])
      .filter(({ value }) => value > TOUCHED ** 2)
      .map(({ vector }): Loose => ({ point: id, direction: vector }));
  });
}
