/**
 * Eigenvalues and eigenvectors of a symmetric 3 x 3 matrix by Jacobi's method: turn the axes in one coordinate plane after
 * another so that its off-diagonal entry becomes zero. The product of the turns holds the eigenvectors, which come out
 * square to each other however near the eigenvalues lie: a closed form by the cubic loses that. Each sweep about squares
 * what is left off the diagonal. (Golub and Van Loan, Matrix Computations, the symmetric eigenvalue problem; memory.)
 */
export type Triple = readonly [number, number, number];

export interface EigenPair {
  readonly value: number;
  /** Unit vector; its component of largest size is positive. */
  readonly vector: Triple;
}

const PLANES = [
  [0, 1],
  [0, 2],
  [1, 2],
] as const;

/** Five sweeps reach double precision; more find nothing left to turn. */
const SWEEPS = 12;

/** Greatest value first; errors of a value about 1e-15 of the greatest in size. Only a matrix equal to its transpose has these. */
export function symmetricEigen(matrix: readonly [Triple, Triple, Triple]): readonly [EigenPair, EigenPair, EigenPair] {
  const a = matrix.map((row) => [...row]);
  const vectors = [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ];
  const size = Math.hypot(...a.flat());
  for (let sweep = 0; sweep < SWEEPS; sweep++) {
    for (const [p, q] of PLANES) {
      if (size + Math.abs(a[p]![q]!) === size) a[p]![q] = a[q]![p] = 0;
      else turn(a, vectors, p, q);
    }
  }
  const pair = (i: number): EigenPair => ({ value: a[i]![i]!, vector: upright(vectors.map((row) => row[i]!)) });
  const [first, second, third] = [pair(0), pair(1), pair(2)].toSorted((one, other) => other.value - one.value);
  return [first!, second!, third!];
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
function upright([x, y, z]: readonly number[]): Triple {
  const largest = [x!, y!, z!].reduce((most, each) => (Math.abs(each) > Math.abs(most) ? each : most));
  const sign = largest < 0 ? -1 : 1;
  return [sign * x!, sign * y!, sign * z!];
}
