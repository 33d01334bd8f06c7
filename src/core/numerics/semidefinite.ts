/**
 * A symmetric matrix with no negative eigenvalue, taken apart even where it is singular: Cholesky with the greatest pivot of what is left
 * (Golub and Van Loan, Matrix Computations, 4.2.8; Higham, Analysis of the Cholesky Decomposition of a Semi-definite Matrix, 1990). What the
 * matrix leaves open are the directions of its null space; all else is solved as if they were held.
 *
 * Rows lie one after another in a Float64Array.
 */

export interface Semidefinite {
  readonly size: number;
  readonly rank: number;
  /** Of the null space: size - rank of them, of length 1, square to each other. */
  readonly open: readonly Float64Array[];
  /** The shortest x with the least |A x - right|, for a `right` in the range of the matrix. */
  solve(right: Float64Array): Float64Array;
  /**
   * A generalised inverse G: A G A = A. For any a in the range a G a is what every generalised inverse gives (Rao and Mitra,
   * Generalized Inverse of Matrices and its Applications, 1971, lemma 2.2.4). The inverse itself where the rank is full.
   */
  inverse(): Float64Array;
}

/** Of the diagonal, which is 1. A pivot below it, and the direction is open: of a square, so what is known through it is a hundred thousand times less sure. */
const OPEN = 1e-10;

interface Factor {
  /** Lower triangle, its first `rank` columns; rows and columns in `order`. */
  readonly work: Float64Array;
  readonly order: readonly number[];
  readonly rank: number;
}

/**
 * O(n^3 / 3). Rows and columns are first counted so that the diagonal is 1: what is known of one unknown says nothing of whether another is known at all. Most
 * matrices are regular, and those are done row by row, which takes a quarter of the time that looking for pivots does.
 */
export function semidefinite(matrix: Float64Array, size: number): Semidefinite {
  const n = size;
  const unit = new Float64Array(n);
  for (let i = 0; i < n; i++) unit[i] = matrix[i * n + i]! > 0 ? 1 / Math.sqrt(matrix[i * n + i]!) : 1;
  const even = new Float64Array(n * n);
  for (let i = 0; i < n; i++) for (let k = 0; k < n; k++) even[i * n + k] = matrix[i * n + k]! * unit[i]! * unit[k]!;
  const { work, order, rank } = regular(even, n) ?? pivoted(even, n);
  const open = openDirections(work, n, rank, order, unit);
  return {
    size,
    rank,
    open,
    solve(right) {
      const y = new Float64Array(rank);
      for (let i = 0; i < rank; i++) {
        let rest = right[order[i]!]! * unit[order[i]!]!;
        for (let k = 0; k < i; k++) rest -= work[i * n + k]! * y[k]!;
        y[i] = rest / work[i * n + i]!;
      }
      backwards(work, n, rank, y);
      const x = new Float64Array(n);
      for (let i = 0; i < rank; i++) x[order[i]!] = y[i]! * unit[order[i]!]!;
      return withoutOpen(x, open);
    },
    inverse() {
      // Of the factor's inverse the columns, one after another.
      const columns = new Float64Array(rank * rank);
      for (let c = 0; c < rank; c++) {
        const column = c * rank;
        columns[column + c] = 1 / work[c * n + c]!;
        for (let i = c + 1; i < rank; i++) {
          let sum = 0;
          for (let k = c; k < i; k++) sum += work[i * n + k]! * columns[column + k]!;
          columns[column + i] = -sum / work[i * n + i]!;
        }
      }
      const inverse = new Float64Array(n * n);
      for (let a = 0; a < rank; a++) {
        for (let b = 0; b <= a; b++) {
          let sum = 0;
          for (let k = a; k < rank; k++) sum += columns[a * rank + k]! * columns[b * rank + k]!;
          const value = sum * unit[order[a]!]! * unit[order[b]!]!;
          inverse[order[a]! * n + order[b]!] = inverse[order[b]! * n + order[a]!] = value;
        }
      }
      return inverse;
    },
  };
}

/** In the order in which the rows come; null where a pivot is not above OPEN. */
function regular(matrix: Float64Array, n: number): Factor | null {
  const work = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    const row = i * n;
    for (let k = 0; k <= i; k++) {
      const other = k * n;
      let rest = matrix[row + k]!;
      for (let m = 0; m < k; m++) rest -= work[row + m]! * work[other + m]!;
      if (k < i) work[row + k] = rest / work[other + k]!;
      else if (rest > OPEN) work[row + i] = Math.sqrt(rest);
      else return null;
    }
  }
  return { work, order: Array.from({ length: n }, (_, i) => i), rank: n };
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
    for (let i = k; i < n; i++) work[i * n + k] = column[order[i]!]!;
  });
  return { work, order, rank: columns.length };
}

function openDirections(
  work: Float64Array,
  n: number,
  rank: number,
  order: readonly number[],
  unit: Float64Array,
): readonly Float64Array[] {
  const open: Float64Array[] = [];
  for (let free = rank; free < n; free++) {
    const head = new Float64Array(rank);
    for (let i = 0; i < rank; i++) head[i] = -work[free * n + i]!;
    backwards(work, n, rank, head);
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
function backwards(work: Float64Array, n: number, rank: number, y: Float64Array): void {
  for (let i = rank - 1; i >= 0; i--) {
    let rest = y[i]!;
    for (let k = i + 1; k < rank; k++) rest -= work[k * n + i]! * y[k]!;
    y[i] = rest / work[i * n + i]!;
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
