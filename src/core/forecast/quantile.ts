/**
 * The gap that 95 of 100 stay under, where the openings of a joint's lines are normal together. Of their covariance a square root of few
 * columns, by Cholesky with pivots: a rigid end moves against what it lies on in six ways and little more. Then a fixed, even sample of as
 * many normal numbers: a Kronecker sequence, multiples of the powers of the root of x^(d+1) = x + 1, made normal in pairs by Box and
 * Muller's formula. How exact: docs/maths/forecast.md.
 */

/** Cages in the sample. */
const CAGES = 2048;
/** Of the square root; even, as the normal numbers come in pairs. */
const MOST_COLUMNS = 12;
/** mm2: what is left over once the deviation of every line is less than a hundredth of a mm. */
const LEFT_OVER = 1e-4;

/** How one source moves the openings, mm a standard deviation of it; `weight` is of its variance, 1 as it is, 0 where it is done away with. */
export interface Move {
  readonly row: Float64Array;
  readonly weight: number;
}

/**
 * mm. `nominal` has the openings where nothing is off. A joint gapes as far as its widest line, and not at all where steel is in the
 * way of all. With `lines` less than the length of the rows, what comes after them is what was left long of the same lines, and of each line
 * the lesser counts.
 */
export function gap95(nominal: Float64Array, moves: readonly Move[], lines: number): number {
  const columns = rootOf(moves, nominal.length);
  const gaps = new Float64Array(CAGES);
  const opening = new Float64Array(nominal.length);
  for (let cage = 0; cage < CAGES; cage++) {
    opening.set(nominal);
    for (let c = 0; c < columns.length; c++) {
      const [z, column] = [NORMALS[cage * MOST_COLUMNS + c]!, columns[c]!];
      for (let k = 0; k < opening.length; k++) opening[k]! += z * column[k]!;
    }
    gaps[cage] = widest(opening, lines);
  }
  return quantile95(gaps);
}

/** Of the openings of one cage, mm, at least 0. */
export function widest(opening: Float64Array, lines: number): number {
  const isLong = opening.length > lines;
  let most = 0;
  for (let k = 0; k < lines; k++) {
    const each = isLong ? Math.min(opening[k]!, opening[k + lines]!) : opening[k]!;
    if (each > most) most = each;
  }
  return most;
}

/** The value that 95 of 100 stay under. */
export const quantile95 = (values: Float64Array): number => values.toSorted()[Math.ceil(0.95 * values.length) - 1] ?? 0;

/** Columns whose squares add up to the covariance of the lines. */
function rootOf(moves: readonly Move[], size: number): readonly Float64Array[] {
  const covariance = Array.from({ length: size }, () => new Float64Array(size));
  for (const { row, weight } of moves) {
    if (weight === 0) continue;
    for (let i = 0; i < size; i++) {
      const by = weight * row[i]!;
      if (by === 0) continue;
      const line = covariance[i]!;
      for (let k = 0; k < size; k++) line[k]! += by * row[k]!;
    }
  }
  const columns: Float64Array[] = [];
  const left = Float64Array.from(covariance, (line, i) => line[i]!);
  while (columns.length < MOST_COLUMNS) {
    let pivot = 0;
    for (let i = 1; i < size; i++) if (left[i]! > left[pivot]!) pivot = i;
    if (!(left[pivot]! > LEFT_OVER)) break;
    const root = Math.sqrt(left[pivot]!);
    const column = Float64Array.from(covariance[pivot]!, (value, i) => {
      const known = columns.reduce((sum, before) => sum + before[pivot]! * before[i]!, 0);
      return (value - known) / root;
    });
    column.forEach((value, i) => (left[i]! -= value * value));
    columns.push(column);
  }
  return columns;
}

const NORMALS = evenNormals();

/** A row a cage. */
function evenNormals(): Float64Array {
  let root = 2;
  for (let i = 0; i < 64; i++) root = (1 + root) ** (1 / (MOST_COLUMNS + 1));
  const steps = Array.from({ length: MOST_COLUMNS }, (_, i) => root ** -(i + 1));
  const normals = new Float64Array(CAGES * MOST_COLUMNS);
  const part = (cage: number, i: number): number => (0.5 + (cage + 1) * steps[i]!) % 1;
  for (let cage = 0; cage < CAGES; cage++) {
    for (let i = 0; i < MOST_COLUMNS; i += 2) {
      // Never the logarithm of 0.
      const far = Math.sqrt(-2 * Math.log(1 - part(cage, i)));
      const turn = 2 * Math.PI * part(cage, i + 1);
      normals[cage * MOST_COLUMNS + i] = far * Math.cos(turn);
      normals[cage * MOST_COLUMNS + i + 1] = far * Math.sin(turn);
    }
  }
  return normals;
}
