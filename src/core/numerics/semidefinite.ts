/**
 * A symmetric matrix with no negative eigenvalue, taken apart even where it is singular: Cholesky with the greatest pivot of what is left
 * (Golub and Van Loan, Matrix Computations, 4.2.8; Higham, Analysis of the Cholesky Decomposition of a Semi-definite Matrix, 1990). What the
 * matrix leaves open are the directions of its null space; all else is solved as if they were held. Where it is known which entries a matrix can have, the
 * rest of it costs nothing.
 *
 * Rows lie one after another in a Float64Array.
 */

import { wholly, type Elimination } from './elimination.ts';

export interface Semidefinite {
  readonly size: number;
  readonly rank: number;
  /** Of the null space: size - rank of them, of length 1, square to each other. */
  readonly open: readonly Float64Array[];
  /** The shortest x with the least |A x - right|, for a `right` in the range of the matrix. */
  solve(right: Float64Array): Float64Array;
  /**
   * A generalised inverse G: A G A = A. For any a in the range a G a is what every generalised inverse gives (Rao and Mitra,
   * Generalized Inverse of Matrices and its Applications, 1971, lemma 2.2.4). The inverse itself where the rank is full; then NaN where the factor has
   * no entry, which is nowhere that two unknowns hang on one another (Erisman and Tinney, On Computing Certain Elements of the Inverse of a Sparse Matrix,
   * 1975).
   */
  inverse(): Float64Array;
}

/** Of the diagonal, which is 1. A pivot below it, and the direction is open: of a square, so what is known through it is a hundred thousand times less sure. */
const OPEN = 1e-10;

/** Of the matrix with a diagonal of 1. */
interface Factor extends Elimination {
  /** Column by column, in `order`; the first `rank` of them. */
  readonly work: Float64Array;
  readonly rank: number;
}

/**
 * O(n^3 / 3), or what the entries in `elimination` take. Rows and columns are first counted so that the diagonal is 1: what is known of one unknown says nothing of
 * whether another is known at all. Most matrices are regular, and those are done without looking for pivots. Throws RangeError where the matrix has an entry that
 * `elimination` has not.
 */
export function semidefinite(matrix: Float64Array, size: number, elimination?: Elimination): Semidefinite {
  const n = size;
  const unit = new Float64Array(n);
  for (let i = 0; i < n; i++) unit[i] = matrix[i * n + i]! > 0 ? 1 / Math.sqrt(matrix[i * n + i]!) : 1;
  const even = new Float64Array(n * n);
  for (let i = 0; i < n; i++) for (let k = 0; k < n; k++) even[i * n + k] = matrix[i * n + k]! * unit[i]! * unit[k]!;
  const factor = regular(even, n, elimination ?? wholly(n)) ?? pivoted(even, n);
  const { work, order, below, rank } = factor;
  const open = openDirections(factor, n, unit);
  return {
    size,
    rank,
    open,
    solve(right) {
      const y = Float64Array.from({ length: rank }, (_, k) => right[order[k]!]! * unit[order[k]!]!);
      for (let k = 0; k < rank; k++) {
        const value = (y[k]! /= work[k * n + k]!);
        for (const i of below[k]!) y[i]! -= work[k * n + i]! * value;
      }
      backwards(factor, n, y);
      const x = new Float64Array(n);
      for (let k = 0; k < rank; k++) x[order[k]!] = y[k]! * unit[order[k]!]!;
      return withoutOpen(x, open);
    },
    inverse() {
      const turned = turnedOver(factor, n);
      const inverse = new Float64Array(n * n).fill(rank < n ? 0 : NaN);
      for (let k = 0; k < rank; k++) {
        const [a, scale] = [order[k]!, unit[order[k]!]!];
        inverse[a * n + a] = turned[k * n + k]! * scale * scale;
        for (const i of below[k]!) {
          const b = order[i]!;
          inverse[a * n + b] = inverse[b * n + a] = turned[k * n + i]! * scale * unit[b]!;
        }
      }
      return inverse;
    },
  };
}

/** In the order that is given; null where a pivot is not above OPEN. */
function regular(matrix: Float64Array, n: number, { order, below }: Elimination): Factor | null {
  const work = new Float64Array(n * n);
  for (let k = 0; k < n; k++) {
    const [column, row] = [k * n, order[k]! * n];
    work[column + k] = matrix[row + order[k]!]!;
    for (const i of below[k]!) work[column + i] = matrix[row + order[i]!]!;
    for (let i = k + 1; i < n; i++)
      if (work[column + i] === 0 && matrix[row + order[i]!] !== 0)
        throw new RangeError('an entry where none was to be');
  }
  const entries = new Float64Array(n);
  for (let k = 0; k < n; k++) {
    const column = k * n;
    const rows = below[k]!;
    const pivot = work[column + k]!;
    if (!(pivot > OPEN)) return null;
    const root = Math.sqrt(pivot);
    work[column + k] = root;
    for (let a = 0; a < rows.length; a++) {
      entries[a] = work[column + rows[a]!]! / root;
      work[column + rows[a]!] = entries[a]!;
    }
    for (let a = 0; a < rows.length; a++) {
      const share = entries[a]!;
      const other = rows[a]! * n;
      for (let b = a; b < rows.length; b++) work[other + rows[b]!]! -= share * entries[b]!;
    }
  }
  return { work, order, below, rank: n };
}

/**
 * The greatest pivot of what is left first, up to the first that is not above OPEN. Column by column: what is left is kept up on the diagonal alone,
 * and a column is worked out once its pivot is chosen.
 */
function pivoted(matrix: Float64Array, n: number): Factor {
  const left = new Float64Array(n);
  for (let i = 0; i < n; i++) left[i] = matrix[i * n + i]!;
  const order = Array.from({ length: n }, (_, i) => i);
  const columns: Float64Array[] = [];
  for (let rank = 0; rank < n; rank++) {
    let at = rank;
    for (let i = rank + 1; i < n; i++) if (left[order[i]!]! > left[order[at]!]!) at = i;
    const pivot = order[at]!;
    if (!(left[pivot]! > OPEN)) break;
    [order[rank], order[at]] = [pivot, order[rank]!];
    const column = matrix.slice(pivot * n, pivot * n + n);
    for (const before of columns) {
      const share = before[pivot]!;
      if (share === 0) continue;
      for (let i = 0; i < n; i++) column[i]! -= share * before[i]!;
    }
    const root = Math.sqrt(column[pivot]!);
    for (let i = 0; i < n; i++) {
      column[i]! /= root;
      left[i]! -= column[i]! * column[i]!;
    }
    columns.push(column);
  }
  const work = new Float64Array(n * n);
  columns.forEach((column, k) => {
    for (let i = k; i < n; i++) work[k * n + i] = column[order[i]!]!;
  });
  return { work, order, below: wholly(columns.length).below, rank: columns.length };
}

/** The inverse of factor times transpose, from the last column on: where the factor has entries, and their images. */
function turnedOver({ work, below, rank }: Factor, n: number): Float64Array {
  const turned = new Float64Array(n * n);
  const entries = new Float64Array(n);
  for (let k = rank - 1; k >= 0; k--) {
    const column = k * n;
    const rows = below[k]!;
    const pivot = work[column + k]!;
    for (let a = 0; a < rows.length; a++) entries[a] = work[column + rows[a]!]! / pivot;
    let own = 1 / (pivot * pivot);
    for (let a = 0; a < rows.length; a++) {
      const other = rows[a]! * n;
      let sum = 0;
      for (let b = 0; b < rows.length; b++) sum += entries[b]! * turned[other + rows[b]!]!;
      turned[column + rows[a]!] = -sum;
      turned[other + k] = -sum;
      own += entries[a]! * sum;
    }
    turned[column + k] = own;
  }
  return turned;
}

function openDirections(factor: Factor, n: number, unit: Float64Array): readonly Float64Array[] {
  const { work, order, rank } = factor;
  const open: Float64Array[] = [];
  for (let free = rank; free < n; free++) {
    const head = new Float64Array(rank);
    for (let i = 0; i < rank; i++) head[i] = -work[i * n + free]!;
    backwards(factor, n, head);
    const direction = new Float64Array(n);
    for (let i = 0; i < rank; i++) direction[order[i]!] = head[i]! * unit[order[i]!]!;
    direction[order[free]!] = unit[order[free]!]!;
    // Twice, as once leaves what rounding brought in (Golub and Van Loan, 5.2.9).
    const straight = withoutOpen(withoutOpen(direction, open), open);
    const size = Math.hypot(...straight);
    open.push(straight.map((part) => part / size));
  }
  return open;
}

/** Solves with the transpose of the upper left of the factor, in place. */
function backwards({ work, below, rank }: Factor, n: number, y: Float64Array): void {
  for (let k = rank - 1; k >= 0; k--) {
    let rest = y[k]!;
    for (const i of below[k]!) rest -= work[k * n + i]! * y[i]!;
    y[k] = rest / work[k * n + k]!;
  }
}

function withoutOpen(x: Float64Array, open: readonly Float64Array[]): Float64Array {
  const rest = x.slice();
  for (const direction of open) {
    let along = 0;
    for (let i = 0; i < rest.length; i++) along += rest[i]! * direction[i]!;
    for (let i = 0; i < rest.length; i++) rest[i]! -= along * direction[i]!;
  }
  return rest;
}
