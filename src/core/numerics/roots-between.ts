/**
 * Real roots of a polynomial within an interval, by the roots of its derivatives: between two of them the polynomial only rises
 * or only falls, so that a change of sign holds exactly one root, which bisected Newton steps take to the last digit. No leading
 * coefficient need be there, and none is divided by.
 */

/** Halvings of an interval of doubles come to its last digit well before. */
const MOST_STEPS = 200;

/**
 * The roots at which the polynomial changes its sign, ascending, `low` and `high` counted in; one that it only touches is not given.
 *
 * @param coefficients the constant first
 */
export function rootsBetween(coefficients: readonly number[], low: number, high: number): readonly number[] {
  if (coefficients.length < 2) return [];
  const derivative = coefficients.slice(1).map((coefficient, i) => coefficient * (i + 1));
  const ends = [low, ...rootsBetween(derivative, low, high), high];
  const roots: number[] = [];
  for (const [i, to] of ends.slice(1).entries()) {
    const from = ends[i]!;
    const [atFrom, atTo] = [valueAt(coefficients, from), valueAt(coefficients, to)];
    if (atFrom === 0 && i === 0) roots.push(from);
    if (atTo === 0 ? atFrom !== 0 : atFrom * atTo < 0)
      roots.push(rootOf(coefficients, derivative, from, to, atFrom < 0));
  }
  return roots;
}

/** Horner's scheme. */
const valueAt = (coefficients: readonly number[], x: number): number =>
  coefficients.reduceRight((value, coefficient) => value * x + coefficient, 0);

function rootOf(
  coefficients: readonly number[],
  derivative: readonly number[],
  low: number,
  high: number,
  rises: boolean,
): number {
  let x = 0.5 * (low + high);
  for (let step = 0; step < MOST_STEPS; step++) {
    const value = valueAt(coefficients, x);
    if (value === 0) return x;
    if (value < 0 === rises) low = x;
    else high = x;
    const newton = x - value / valueAt(derivative, x);
    const next = newton > low && newton < high ? newton : 0.5 * (low + high);
    if (next === x || next === low || next === high) return next;
    x = next;
  }
  return x;
}
