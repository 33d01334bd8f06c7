/** Times on the wall's clock; of many runs the median, because a shared machine now and then takes a rest. */

export function medianOf(values: readonly number[]): number {
  const rising = values.toSorted((a, b) => a - b);
  const middle = rising.length / 2;
  return (rising[Math.floor(middle)]! + rising[Math.ceil(middle) - 1 + (rising.length % 2)]!) / 2;
}

/** Milliseconds that `work` takes. */
export function timeOf(work: () => unknown): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

/** Median milliseconds of `runs` goes, after `warmUp` that are not counted. */
export function medianTime(runs: number, warmUp: number, work: () => unknown): number {
  for (let i = 0; i < warmUp; i++) work();
  return medianOf(Array.from({ length: runs }, () => timeOf(work)));
}
