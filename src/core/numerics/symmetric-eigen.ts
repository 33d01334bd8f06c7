/**
 * Eigenvalues and eigenvectors of a small symmetric matrix by Jacobi's method: turn the axes in one coordinate plane after
 * another so that its off-diagonal entry becomes zero. The product of the turns holds the eigenvectors, which come out
 * square to each other however near the eigenvalues lie: a closed form by the cubic loses that. Each sweep about squares
 * what is left off the diagonal. (Golub and Van Loan, Matrix Computations, the symmetric eigenvalue problem; memory.)
 */
export type Triple = readonly [number, number, number];

export interface EigenPair<Row extends readonly number[]> {
  readonly value: number;
  /** Unit vector; its component of largest size is positive. */
  readonly vector: Row;
}

/** Six sweeps reach double precision in sizes up to ten; more find nothing left to turn. */
const SWEEPS = 12;

/** Greatest value first, one pair a row; errors of a value about 1e-15 of the greatest in size. Only a matrix equal to its transpose has these. */
export function symmetricEigen<Row extends readonly number[]>(matrix: readonly Row[]): readonly EigenPair<Row>[] {
  const n = matrix.length;
  const a = matrix.map((row) => [...row]);
  const vectors = matrix.map((_, i) => matrix.map((__, k) => (i === k ? 1 : 0)));
  const size = Math.hypot(...a.flat());
  for (let sweep = 0; sweep < SWEEPS; sweep++) {
    for (let p = 0; p < n - 1; p++) {
      for (let q = p + 1; q < n; q++) {
        if (size + Math.abs(a[p]![q]!) === size) a[p]![q] = a[q]![p] = 0;
        else turn(a, vectors, p, q);
      }
    }
  }
  return matrix
    .map((_, i) => ({ value: a[i]![i]!, vector: upright(vectors.map((row) => row[i]!)) as unknown as Row }))
    .toSorted((one, other) => other.value - one.value);
}

/** One turn in the plane of axes p and q, of the two that would do by the smaller angle. */
function turn(a: number[][], vectors: number[][], p: number, q: number): void {
  const cotangent = (a[q]![q]! - a[p]![p]!) / (2 * a[p]![q]!);
  const t = (cotangent < 0 ? -1 : 1) / (Math.abs(cotangent) + Math.hypot(cotangent, 1));
  const c = 1 / Math.hypot(t, 1);
  const s = t * c;
  const columns = (rows: number[][]) =>
    rows.forEach((row) => {
      const [x, y] = [row[p]!, row[q]!];
      row[p] = c * x - s * y;
      row[q] = s * x + c * y;
    });
  columns(vectors);
  columns(a);
  const [x, y] = [a[p]!, a[q]!];
  a[p] = x.map((value, k) => c * value - s * y[k]!);
  a[q] = x.map((value, k) => s * value + c * y[k]!);
  a[p][q] = a[q][p] = 0;
}

/** v and -v are the same axis: one of them, always the same. */
function upright(vector: readonly number[]): readonly number[] {
  const largest = vector.reduce((most, each) => (Math.abs(each) > Math.abs(most) ? each : most));
  return largest < 0 ? vector.map((each) => -each) : vector;
}
