/** The one function of jstat that the tests use. */
declare module 'jstat' {
  const jstat: { readonly studentt: { inv(p: number, freedom: number): number } };
  export default jstat;
}
