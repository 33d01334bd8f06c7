/**
 * Real roots of s^4 + p s^2 + q s + c where the quartic goes from negative to positive, and the stretches where it is
 * negative: what a line needs that leaves a torus, and where it lies within. Its stationary points come from the cubic in closed form and cut the axis into monotone stretches; a safeguarded
 * Newton iteration finds the root in each. The textbook closed form for the quartic itself was not taken: it loses half
 * the digits at the near-double roots that equal tubes always have.
 *
 * Grazing. A lowest value from 0 to `touch` above it is a line that just touches from outside: one double root, given
 * once. A highest value between two dips that is not more than `touch` above zero is a line that touches from inside: it
 * does not leave there, and no root is given.
 */

/**
 * Writes the rising roots, ascending, into `out`; answers how many (0 to 2). `touch` is in units of the quartic; beyond
 * +-`far` the quartic is known to be positive. `guess` only saves steps where it lies near a root, as that of a
 * neighbouring line does; NaN where there is none.
 */
export function risingRoots(
  p: number,
  q: number,
  c: number,
  touch: number,
  far: number,
  guess: number,
  out: Float64Array,
): number {
  const value = (s: number) => ((s * s + p) * s + q) * s + c;
  const count = stationaryPoints(p / 2, q / 4);
  let found = 0;
  // The quartic falls to its first stationary point and rises from the last: minima are the even-numbered ones.
  for (let k = 0; k < count; k += 2) {
    const low = stationary[k]!;
    const atLow = value(low);
    if (atLow >= 0) {
      if (atLow <= touch) out[found++] = low;
    } else if (k + 1 === count) {
      // Beyond its last turn the quartic is convex: from far out Newton comes down on the root without overshooting.
      out[found++] = rootBetween(low, far, guess > low && guess < far ? guess : far, p, q, c);
    } else if (value(stationary[k + 1]!) > touch) {
      const high = stationary[k + 1]!;
      out[found++] = rootBetween(low, high, guess > low && guess < high ? guess : 0.5 * (low + high), p, q, c);
    }
  }
  return found;
}

/**
 * Writes where the quartic is not above zero into `out`, a pair [from, to] for each stretch, ascending; answers how many (0 to 2).
 * A touch from outside is a stretch without length; two that touch each other are one. `touch` and `far` as above.
 */
export function stretchesBelow(p: number, q: number, c: number, touch: number, far: number, out: Float64Array): number {
  const value = (s: number) => ((s * s + p) * s + q) * s + c;
  const count = stationaryPoints(p / 2, q / 4);
  let found = 0;
  let open = false;
  for (let k = 0; k < count; k += 2) {
    const low = stationary[k]!;
    const atLow = value(low);
    if (atLow > touch) continue;
    const before = k === 0 ? -far : stationary[k - 1]!;
    const next = k + 1 === count ? far : stationary[k + 1]!;
    const shut = k + 1 === count || value(next) > touch;
    // Followed backwards, where the quartic falls it rises.
    if (!open)
      out[2 * found] = atLow >= 0 ? low : -rootBetween(-low, -before, k === 0 ? far : -(low + before) / 2, p, -q, c);
    open = atLow < 0 && !shut;
    if (open) continue;
    out[2 * found + 1] = atLow >= 0 ? low : rootBetween(low, next, k + 1 === count ? far : (low + next) / 2, p, q, c);
    found += 1;
  }
  return found;
}

/** Some five units in the last place of a double: nearer no step comes. */
const LAST_DIGITS = 1e-15;

/** Safeguarded Newton on a rising stretch, value(low) < 0 < value(high), from the guess s. */
function rootBetween(low: number, high: number, s: number, p: number, q: number, c: number): number {
  for (let step = 0; step < 100; step++) {
    const f = ((s * s + p) * s + q) * s + c;
    if (f === 0) return s;
    if (f < 0) low = s;
    else high = s;
    const slope = (4 * s * s + 2 * p) * s + q;
    let next = s - f / slope;
    if (!(next > low && next < high)) next = 0.5 * (low + high);
    if (Math.abs(next - s) <= LAST_DIGITS * (Math.abs(next) + 1)) return next;
    s = next;
  }
  return s;
}

const stationary = new Float64Array(3);
/** Where the quartic asked of last turns, ascending; NaN for each of the three that it has not. */
export const turns: Float64Array = stationary;

/** Real roots of s^3 + a s + b, ascending, into `stationary`; a double root (no turn of the quartic there) is left out. */
function stationaryPoints(a: number, b: number): number {
  const disc = (b / 2) ** 2 + (a / 3) ** 3;
  if (disc >= 0 || a >= 0) {
    const root = Math.sqrt(Math.max(disc, 0));
    // The larger of the two cube roots first; the other follows from their product, with no cancellation.
    const large = b > 0 ? Math.cbrt(-b / 2 - root) : Math.cbrt(-b / 2 + root);
    stationary[0] = polishCubic(large === 0 ? 0 : large - a / (3 * large), a, b);
    stationary[1] = stationary[2] = NaN;
    return 1;
  }
  const radius = 2 * Math.sqrt(-a / 3);
  const third = Math.acos(Math.min(1, Math.max(-1, (3 * b) / (a * radius)))) / 3;
  // A third of a turn before and behind: -cos / 2 -+ sin sqrt(3) / 2.
  const behind = -0.5 * Math.cos(third);
  const aside = Math.sqrt(0.75) * Math.sin(third);
  stationary[0] = polishCubic(radius * (behind - aside), a, b);
  stationary[1] = polishCubic(radius * (behind + aside), a, b);
  stationary[2] = polishCubic(-2 * radius * behind, a, b);
  return 3;
}

/** One Newton step: takes the trigonometric form's last digits. */
function polishCubic(s: number, a: number, b: number): number {
  const slope = 3 * s * s + a;
  return slope === 0 ? s : s - ((s * s + a) * s + b) / slope;
}
