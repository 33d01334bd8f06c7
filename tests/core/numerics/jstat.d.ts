/** The functions of jstat that the tests use. */
declare module 'jstat' {
  interface Distribution {
    inv(p: number, freedom: number): number;
    cdf(x: number, freedom: number): number;
  }
  type Matrix = readonly (readonly number[])[];
  const jstat: {
    readonly studentt: Distribution;
    readonly chisquare: Distribution;
    readonly normal: { inv(p: number, mean: number, deviation: number): number };
    transpose(matrix: Matrix): number[][];
    multiply(left: Matrix, right: Matrix): number[][];
    inv(matrix: Matrix): number[][];
  };
  export default jstat;
}
