/**
 * The places that answer the readings best: weighted least squares by Gauss and Newton, each reading counted in its own deviation; where a step leads
 * uphill it is shortened as Levenberg and Marquardt do (Nocedal and Wright, Numerical Optimization, 10.3). What no reading moves stays where it was
 * guessed: of all places that answer as well, the nearest to the guess at each step. docs/maths/survey.md.
 */
import { length, subtract } from '../geometry/vector.ts';
import { bareId, isPrimed } from '../job/reference.ts';
import { eliminationOf } from '../numerics/elimination.ts';
import { semidefinite, type Semidefinite } from '../numerics/semidefinite.ts';
import { blocksOf, placeIn, rowsAt, slotsOf, type Network, type Row, type Slots } from './network.ts';

export interface Solution {
  /** Three a point. */
  readonly places: Float64Array;
  readonly rows: readonly Row[];
  /** Sum of squared residuals, each in its deviation. */
  readonly squares: number;
  /** Of the equations there; its inverse is known within a point and between points that one of the readings ties; its `open` directions are what no reading fixes, in the order of `unknown`. */
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
  const { blocks, links } = blocksOf(network, used, unknown, slots);
  const elimination = eliminationOf(blocks, links);
  let places = start;
  let rows = rowsAt(network, used, unknown, places);
  let squares = squaresOf(rows);
  let damping = 0;
  let more = 2;
  // Once a step has led uphill: tapes that do not quite reach one another bend the way down, and straight steps would swing about the bottom.
  let isCurved = false;
  let normal: Semidefinite | null = null;
  for (let step = 0; step < MOST_STEPS && damping < STUCK; step++) {
    const downhill = new Float64Array(size);
    for (const { at, slopes, residual, deviation } of rows) {
      at.forEach((i, k) => (downhill[i]! -= (slopes[k]! * residual) / (deviation * deviation)));
    }
    const matrix = normalOf(rows, size);
    const greatest = greatestOf(matrix, size);
    if (isCurved) addCurves(matrix, network, slots, rows, size, places);
    for (let i = 0; i < size; i++) matrix[i * size + i]! += damping * greatest;
    const taken = semidefinite(matrix, size, elimination);
    const by = isCurved && taken.rank < size ? null : taken.solve(downhill);
    // Before the step is taken: from where it came to rest it is at rest at once, and does not stir.
    if (by?.every((part) => Math.abs(part) < AT_REST)) {
      // The equations there are in hand, where nothing was added to them.
      if (!isCurved) normal = taken;
      break;
    }
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
  return { places, rows, squares, normal: normal ?? semidefinite(normalOf(rows, size), size, elimination) };

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
