/** The functions of jstat that the tests use. */
declare module 'jstat' {
  interface Distribution {
    inv(p: number, freedom: number): number;
  }
  const jstat: { readonly studentt: Distribution; readonly chisquare: Distribution };
  export default jstat;
}
