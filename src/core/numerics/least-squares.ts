/**
 * What some measured figures say of unknowns of which a little is known beforehand: Gauss and Newton's least squares with Levenberg and
 * Marquardt's damping (Nocedal and Wright, Numerical Optimization, 10.3).
 *
 * Each unknown is counted in its own deviation from what is expected of it, each figure in the deviation that it is measured with. So the
 * sum of squares of misses and unknowns is the least where both together are likeliest (Tarantola, Inverse Problem Theory, 3.2).
 */
import { solveLinear } from './linear.ts';

export interface LeastSquares {
  /** The unknowns, in deviations from what was expected. */
  readonly unknowns: readonly number[];
  /** Of each figure: measured less what the unknowns make of it, in its deviations. */
  readonly misses: readonly number[];
  /** The sum of squares of both. */
  readonly squares: number;
  /** Of the unknowns, once the figures are known; the identity where the figures say nothing. */
  readonly covariance: readonly (readonly number[])[];
  /** Of each figure, what its miss is counted in once it is left out and the others say what it should be: misses / freedom is the miss from those. */
  readonly freedom: readonly number[];
}

/**
 * Share of a deviation that slopes are taken over, to either side. At a bend of 1.5 degrees and 2 m of tube beyond it that is 0.05 mm: the slope is
 * then good to 1e-8 of itself, and where the figure has a kink it is the mean of both sides.
 */
const STEP = 1e-3;

/** In deviations. Unknowns that move by less have come to rest. */
const AT_REST = 1e-10;

/** Of what is left: along a kink the steps get ever shorter. */
const NO_GAIN = 1e-13;

/** A kink may keep the steps from coming to rest; no more than these are tried, of 5 to 10 that are usual. */
const MOST_STEPS = 60;

/** The first step is all but Gauss and Newton's own. */
const FIRST_DAMPING = 1e-3;

/** Damping beyond which no step is short enough to do better. */
const STUCK = 1e8;

/**
 * `missesAt` answers measured less reckoned, in deviations. It goes downhill from `start`, to a place where no short step does better, or where one gains
 * less than `enough` of what is left.
 */
export function leastSquares(
  missesAt: (unknowns: readonly number[]) => readonly number[],
  start: readonly number[],
  enough: number = NO_GAIN,
): LeastSquares {
  let unknowns = start;
  let misses = missesAt(unknowns);
  let damping = FIRST_DAMPING;
  let slopes = slopesAt(missesAt, unknowns);
  for (let step = 0; step < MOST_STEPS && damping < STUCK; step++) {
    const downhill = unknowns.map((each, i) => -each - sumOf(misses, (miss, k) => miss * slopes[i]![k]!));
    const by = solveLinear(normal(slopes, damping), downhill);
    const next = unknowns.map((each, i) => each + (by?.[i] ?? 0));
    const missesThere = missesAt(next);
    const gain = squares(unknowns) + squares(misses) - squares(next) - squares(missesThere);
    // At the bottom rounding alone decides.
    if (by === null || !(gain >= 0)) {
      damping *= 10;
      continue;
    }
    unknowns = next;
    misses = missesThere;
    slopes = slopesAt(missesAt, unknowns);
    damping /= 10;
    if (Math.hypot(...by) < AT_REST || gain < enough * (squares(misses) + squares(next))) break;
  }
  const information = normal(slopes, 0);
  const covariance = unknowns.map((_, i) =>
    solveLinear(
      information,
      unknowns.map((__, k) => (i === k ? 1 : 0)),
    )!,
  );
  const freedom = misses.map((_, k) => {
    const slope = slopes.map((each) => each[k]!);
    return 1 - sumOf(slope, (each, i) => each * sumOf(covariance[i]!, (cov, j) => cov * slope[j]!));
  });
  return { unknowns, misses, squares: squares(unknowns) + squares(misses), covariance, freedom };
}

/** Of each unknown: how the misses change with it. */
const slopesAt = (
  missesAt: (unknowns: readonly number[]) => readonly number[],
  unknowns: readonly number[],
): readonly (readonly number[])[] =>
  unknowns.map((each, i) => {
    const [more, less] = [missesAt(unknowns.with(i, each + STEP)), missesAt(unknowns.with(i, each - STEP))];
    return more.map((miss, k) => (miss - less[k]!) / (2 * STEP));
  });

/** The unknowns' own squares counted in; of each on the diagonal so much the more as damping says. */
const normal = (slopes: readonly (readonly number[])[], damping: number): readonly (readonly number[])[] =>
  slopes.map((a, i) =>
    slopes.map((b, k) => {
      const both = sumOf(a, (each, m) => each * b[m]!);
      return i === k ? (both + 1) * (1 + damping) : both;
    }),
  );

const sumOf = (of: readonly number[], each: (one: number, i: number) => number): number =>
  of.reduce((sum, one, i) => sum + each(one, i), 0);
const squares = (of: readonly number[]): number => sumOf(of, (one) => one * one);
