/**
 * How much is drawn. `npm test` is for every change and takes a sample of what is slow; `npm run test:long` runs the same files with all
 * of it: docs/long-runs.md. What is asserted is the same in both.
 */
export const LONG = process.env['CAGEWRIGHT_LONG'] === '1';

/** How many: `few` in `npm test`, `many` in the long run. */
export const drawn = (few: number, many: number): number => (LONG ? many : few);

/** All of them in the long run; in `npm test` the first of each kind, as `kindOf` names it. */
export function oneOfEach<T>(cases: readonly T[], kindOf: (one: T) => string): T[] {
  if (LONG) return [...cases];
  const seen = new Set<string>();
  return cases.filter((one) => {
    const kind = kindOf(one);
    if (seen.has(kind)) return false;
    seen.add(kind);
    return true;
  });
}
