/** Times on the wall's clock. The median is what counts; on a machine that has other work the quickest comes nearer. */

export interface Timing {
  readonly median: number;
  readonly quickest: number;
}

export function timingOf(times: readonly number[]): Timing {
  const rising = times.toSorted((a, b) => a - b);
  return { median: rising[Math.floor(rising.length / 2)]!, quickest: rising[0]! };
}

/** Milliseconds that `work` takes. */
export function timeOf(work: () => unknown): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

/** Milliseconds of `runs` goes, after `warmUp` that are not counted. */
export function timed(runs: number, warmUp: number, work: () => unknown): Timing {
  for (let i = 0; i < warmUp; i++) work();
  return timingOf(Array.from({ length: runs }, () => timeOf(work)));
}
