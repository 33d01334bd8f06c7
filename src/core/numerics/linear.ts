/** A few linear equations in as many unknowns, by elimination with the greatest pivot of each column. */

/**
 * The x with rows x = right; null where the rows leave it open, within rounding of the greatest of them. Golub and Van Loan, Matrix Computations, 3.4.
 */
export function solveLinear(rows: readonly (readonly number[])[], right: readonly number[]): readonly number[] | null {
  const n = rows.length;
  const work = rows.map((row, i) => [...row, right[i]!]);
  const greatest = Math.max(...rows.flat().map(Math.abs));
  for (let column = 0; column < n; column++) {
    let pivot = column;
    for (let row = column + 1; row < n; row++) {
      if (Math.abs(work[row]![column]!) > Math.abs(work[pivot]![column]!)) pivot = row;
    }
    if (!(Math.abs(work[pivot]![column]!) > n * Number.EPSILON * greatest)) return null;
    [work[column], work[pivot]] = [work[pivot]!, work[column]!];
    for (let row = column + 1; row < n; row++) {
      const share = work[row]![column]! / work[column]![column]!;
      for (let k = column; k <= n; k++) work[row]![k]! -= share * work[column]![k]!;
    }
  }
  const x = Array.from({ length: n }, () => 0);
  for (let row = n - 1; row >= 0; row--) {
    let rest = work[row]![n]!;
    for (let k = row + 1; k < n; k++) rest -= work[row]![k]! * x[k]!;
    x[row] = rest / work[row]![row]!;
  }
  return x;
}
