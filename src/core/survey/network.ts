/**
 * The measured points and what was read of them, as equations: which coordinates are unknown, and the places that answer the readings
 * best. Weighted least squares by Gauss and Newton, each reading counted in its own deviation; where a step leads uphill it is shortened as
 * Levenberg and Marquardt do (Nocedal and Wright, Numerical Optimization, 10.3). What no reading moves stays where it was
 * guessed: of all places that answer as well, the nearest to the guess at each step. docs/maths/survey.md.
 */
import { AXIS_INDEX, length, mirrored, subtract, type Vec3 } from '../geometry/vector.ts';
import { sigmaOf, type Measurement } from '../job/kinds/measurement.ts';
import type { Point } from '../job/kinds/point.ts';
import { bareId, isPrimed, type PointId, type PointRef } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import { semidefinite, type Semidefinite } from '../numerics/semidefinite.ts';
import { readingAt } from './equation.ts';
import { floorOf, POSE, SQUARE_FLOOR } from './floor.ts';

/** What a survey is made of. */
export type Surveyed = Pick<Job, 'points' | 'holds' | 'measurements' | 'survey'>;

export interface Network {
  readonly measurements: readonly Measurement[];
  /** The points whose places are asked for, in the job's order. */
  readonly asked: readonly Point[];
  /** Where each point's three coordinates stand among all. */
  readonly first: ReadonlyMap<PointId, number>;
  /** Coordinates as typed, held or guessed, three a point; where the car stands askew the six figures of its pose come after them. */
  readonly guess: Float64Array;
  /** Of these the ones that are asked for. */
  readonly unknown: readonly number[];
  /** Coordinates whose mean with another one is held. */
  readonly tied: readonly Tie[];
  /** Where the pose begins among the coordinates; null where the car stands square. */
  readonly pose: number | null;
  /** Of each point: on which side of the centre plane it is thought, 1 left. */
  readonly side: ReadonlyMap<PointId, 1 | -1>;
}

/** The coordinate `at` is `plus` and `sign` times the one `to`. */
interface Tie {
  readonly at: number;
  readonly to: number;
  readonly sign: number;
  readonly plus: number;
}

interface Held {
  readonly at: number;
  readonly sign: number;
  readonly isAsked: boolean;
}

/** Whether its place comes of measurements. */
export const isMeasured = ({ by }: Point): boolean => by === 'survey';

/** Null where no point's place comes of measurements, and nothing was measured. */
export function networkOf({ points, holds, measurements, survey }: Surveyed): Network | null {
  const asked = points.filter(isMeasured);
  if (asked.length === 0 && measurements.length === 0) return null;
  const first = new Map(points.map(({ id }, i) => [id, 3 * i]));
  const pose = survey?.askew ? 3 * points.length : null;
  const guess = Float64Array.from([
    ...points.flatMap(({ position }) => position),
    ...(pose === null ? [] : Array.from({ length: POSE }, () => 0)),
  ]);
  const fixed = new Set<number>();
  const tied: Tie[] = [];
  const isAsked = new Set(asked.map(({ id }) => id));
  for (const { point, and, axis, value } of holds) {
    const [own, other] = [point, and ?? point].map((reference) => ({
      at: first.get(bareId(reference))! + AXIS_INDEX[axis],
      // An image's offset is the other way.
      sign: axis === 'y' && isPrimed(reference) ? -1 : 1,
      isAsked: isAsked.has(bareId(reference)),
    })) as [Held, Held];
    const off = (2 * value - own.sign * guess[own.at]! - other.sign * guess[other.at]!) / 2;
    // Of a point and its own image the mean lies on the centre plane, wherever the point is.
    if (own.at === other.at && own.sign !== other.sign) continue;
    if (own.at === other.at || !other.isAsked) {
      if (own.isAsked)
        hold(own.at, own.sign * (own.at === other.at ? value : 2 * value - other.sign * guess[other.at]!));
    } else if (!own.isAsked) hold(other.at, other.sign * (2 * value - own.sign * guess[own.at]!));
    else {
      guess[own.at]! += own.sign * off;
      hold(other.at, guess[other.at]! + other.sign * off);
      tied.push({ at: other.at, to: own.at, sign: -own.sign * other.sign, plus: 2 * other.sign * value });
    }
  }
  return {
    measurements,
    asked,
    first,
    guess,
    unknown: [
      ...asked.flatMap(({ id }) => [0, 1, 2].map((k) => first.get(id)! + k)).filter((at) => !fixed.has(at)),
      ...(pose === null ? [] : Array.from({ length: POSE }, (_, k) => pose + k)),
    ],
    tied,
    pose,
    side: sidesAt(first, guess),
  };

  function hold(at: number, value: number): void {
    guess[at] = value;
    fixed.add(at);
  }
}

/** On which side of the centre plane each point lies at these places, 1 left or in it. */
export const sidesAt = (first: Network['first'], places: Float64Array): ReadonlyMap<PointId, 1 | -1> =>
  new Map([...first].map(([id, at]) => [id, places[at + 1]! < 0 ? -1 : 1]));

/** Puts a coordinate there, and the one whose mean with it is held where that wants it. */
export function put({ tied }: Network, places: Float64Array, at: number, value: number): void {
  places[at] = value;
  for (const each of tied) if (each.to === at) places[each.at] = each.plus + each.sign * value;
}

/** Which unknown moves each coordinate, -1 for none, and whether with it or against it. */
export interface Slots {
  readonly of: Int32Array;
  readonly sign: Float64Array;
}

/** Of these unknowns. */
export function slotsOf({ guess, tied }: Network, unknown: readonly number[]): Slots {
  const of = new Int32Array(guess.length).fill(-1);
  const sign = new Float64Array(guess.length).fill(1);
  unknown.forEach((at, i) => (of[at] = i));
  for (const tie of tied) {
    of[tie.at] = of[tie.to]!;
    sign[tie.at] = tie.sign;
  }
  return { of, sign };
}

/** One reading where the points lie now. */
export interface Row {
  /** In the network's list. */
  readonly index: number;
  readonly deviation: number;
  /** Computed less measured. */
  readonly residual: number;
  /** Places among the unknowns that it hangs on, and how it changes with each. */
  readonly at: readonly number[];
  readonly slopes: readonly number[];
}

export interface Solution {
  /** Three a point. */
  readonly places: Float64Array;
  readonly rows: readonly Row[];
  /** Sum of squared residuals, each in its deviation. */
  readonly squares: number;
  /** Of the equations there; its `open` directions are what no reading fixes, in the order of `unknown`. */
  readonly normal: Semidefinite;
}

/** mm. A step shorter than this has come to rest. */
const AT_REST = 1e-9;

/** Of the sum of squares: what rounding alone takes or gives. */
const NO_LOSS = 1e-12;

/** A few are usual; readings that contradict one another by a hand's breadth want tens. */
const MOST_STEPS = 100;

/**
 * Shares of the greatest entry of the diagonal: once a step has led uphill, and at least from then on. How it goes up and down by what a step keeps of its
 * promise: Madsen, Nielsen and Tingleff, Methods for Non-Linear Least Squares Problems (2004), 3.2.
 */
const FIRST_DAMPING = 1e-4;
const LEAST_DAMPING = 1e-9;

/** Damping beyond which no step is short enough to do better. */
const STUCK = 1e10;

/** The place of a point, or of its image, in a list of coordinates. */
export const placeIn =
  ({ first }: Pick<Network, 'first'>, places: Float64Array) =>
  (reference: PointRef): Vec3 => {
    const at = first.get(bareId(reference))!;
    const place: Vec3 = [places[at]!, places[at + 1]!, places[at + 2]!];
    return isPrimed(reference) ? mirrored(place) : place;
  };

/** The readings of these indices at these places; slopes along `unknown` alone. */
export function rowsAt(
  network: Network,
  used: readonly number[],
  unknown: readonly number[],
  places: Float64Array,
): readonly Row[] {
  const slots = slotsOf(network, unknown);
  const at = placeIn(network, places);
  const floor = network.pose === null ? SQUARE_FLOOR : floorOf(places.subarray(network.pose));
  const sideOf = (reference: PointRef): 1 | -1 => network.side.get(bareId(reference))!;
  return used.map((index): Row => {
    const measurement = network.measurements[index]!;
    const { value, slopes, pose } = readingAt(measurement, at, sideOf, floor);
    const sums = new Map<number, number>();
    const sum = (coordinate: number, slope: number): void => {
      const unknownAt = slots.of[coordinate]!;
      if (unknownAt >= 0) sums.set(unknownAt, (sums.get(unknownAt) ?? 0) + slots.sign[coordinate]! * slope);
    };
    for (const [reference, slope] of slopes) {
      const start = network.first.get(bareId(reference))!;
      for (let k = 0; k < 3; k++) {
        if (slope[k] !== 0) sum(start + k, k === 1 && isPrimed(reference) ? -slope[k] : slope[k]!);
      }
    }
    pose.forEach((slope, k) => sum(network.pose! + k, slope));
    return {
      index,
      deviation: sigmaOf(measurement),
      residual: value - measurement.value,
      at: [...sums.keys()],
      slopes: [...sums.values()],
    };
  });
}

const squaresOf = (rows: readonly Row[]): number =>
  rows.reduce((sum, { residual, deviation }) => sum + (residual / deviation) ** 2, 0);

/** The equations' matrix. */
function normalOf(rows: readonly Row[], size: number): Float64Array {
  const normal = new Float64Array(size * size);
  for (const { at, slopes, deviation } of rows) {
    const weight = 1 / (deviation * deviation);
    for (let a = 0; a < at.length; a++) {
      const share = weight * slopes[a]!;
      for (let b = 0; b < at.length; b++) normal[at[a]! * size + at[b]!]! += share * slopes[b]!;
    }
  }
  return normal;
}

/** The places nearest `start` that answer the readings of `used` best, moving `unknown` alone. */
export function solve(
  network: Network,
  used: readonly number[],
  unknown: readonly number[],
  start: Float64Array,
): Solution {
  const size = unknown.length;
  const slots = slotsOf(network, unknown);
  let places = start;
  let rows = rowsAt(network, used, unknown, places);
  let squares = squaresOf(rows);
  let damping = 0;
  let more = 2;
  // Once a step has led uphill: tapes that do not quite reach one another bend the way down, and straight steps would swing about the bottom.
  let isCurved = false;
  for (let step = 0; step < MOST_STEPS && damping < STUCK; step++) {
    const downhill = new Float64Array(size);
    for (const { at, slopes, residual, deviation } of rows) {
      at.forEach((i, k) => (downhill[i]! -= (slopes[k]! * residual) / (deviation * deviation)));
    }
    const matrix = normalOf(rows, size);
    const greatest = greatestOf(matrix, size);
    if (isCurved) addCurves(matrix, network, slots, rows, size, places);
    for (let i = 0; i < size; i++) matrix[i * size + i]! += damping * greatest;
    const taken = semidefinite(matrix, size);
    const by = isCurved && taken.rank < size ? null : taken.solve(downhill);
    // Before the step is taken: from where it came to rest it is at rest at once, and does not stir.
    if (by?.every((part) => Math.abs(part) < AT_REST)) break;
    const next = by && moved(places, by);
    const rowsThere = next && rowsAt(network, used, unknown, next);
    const squaresThere = rowsThere === null ? Infinity : squaresOf(rowsThere);
    if (by === null || !(squaresThere <= squares * (1 + NO_LOSS) + NO_LOSS)) {
      damping = isCurved ? damping * more : FIRST_DAMPING;
      more *= 2;
      isCurved = true;
      continue;
    }
    const promised = by.reduce((sum, part, i) => sum + part * (damping * greatest * part + downhill[i]!), 0);
    const kept = promised > 0 ? (squares - squaresThere) / promised : 1;
    [places, rows, squares] = [next!, rowsThere!, squaresThere];
    if (isCurved) damping = Math.max(damping * Math.max(1 / 3, 1 - (2 * kept - 1) ** 3), LEAST_DAMPING);
    more = 2;
  }
  return { places, rows, squares, normal: semidefinite(normalOf(rows, size), size) };

  function moved(from: Float64Array, by: Float64Array): Float64Array {
    const there = from.slice();
    for (let at = 0; at < there.length; at++) {
      const slot = slots.of[at]!;
      if (slot >= 0) there[at]! += slots.sign[at]! * by[slot]!;
    }
    return there;
  }
}

function greatestOf(matrix: Float64Array, size: number): number {
  let greatest = 0;
  for (let i = 0; i < size; i++) greatest = Math.max(greatest, matrix[i * size + i]!);
  return greatest;
}

/** Newton's own terms of the tapes: v / (d sigma^2) (1 - u u') for a tape of length d along u that is off by v. */
function addCurves(
  matrix: Float64Array,
  network: Network,
  { of, sign }: Slots,
  rows: readonly Row[],
  size: number,
  places: Float64Array,
): void {
  const at = placeIn(network, places);
  for (const { index, residual, deviation } of rows) {
    const measurement = network.measurements[index]!;
    if (measurement.kind !== 'distance') continue;
    const between = subtract(at(measurement.to), at(measurement.from));
    const long = length(between);
    if (long === 0) continue;
    const weight = residual / (long * deviation * deviation);
    /** What moves each coordinate of the difference, and by how much. */
    const moves = ([0, 1, 2] as const).map((k) =>
      (
        [
          ['to', 1],
          ['from', -1],
        ] as const
      ).flatMap(([key, side]) => {
        const reference = measurement[key];
        const coordinate = network.first.get(bareId(reference))! + k;
        const mirror = k === 1 && isPrimed(reference) ? -1 : 1;
        return of[coordinate]! < 0 ? [] : [{ slot: of[coordinate]!, by: side * mirror * sign[coordinate]! }];
      }),
    );
    for (const i of [0, 1, 2] as const) {
      for (const k of [0, 1, 2] as const) {
        const share = weight * ((i === k ? 1 : 0) - (between[i] * between[k]) / (long * long));
        for (const a of moves[i]!) for (const b of moves[k]!) matrix[a.slot * size + b.slot]! += share * a.by * b.by;
      }
    }
  }
}
