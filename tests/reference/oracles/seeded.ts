/** Numbers drawn from a seed (mulberry32, in the public domain): the same joints every time, and a seed to report. */
export interface Draw {
  /** In [from, to). */
  readonly between: (from: number, to: number) => number;
  readonly chance: (share: number) => boolean;
  readonly oneOf: <T>(choices: readonly T[]) => T;
}

export function drawFrom(seed: number): Draw {
  const next = uniformFrom(Math.imul(seed, 0x9e3779b1));
  return {
    between: (from, to) => from + (to - from) * next(),
    chance: (share) => next() < share,
    oneOf: (choices) => choices[Math.floor(next() * choices.length)]!,
  };
}

/** The plain row behind it: from 0 to below 1, the same for the same seed. */
export function uniformFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}
