/**
 * What the torture run is made of. A part tries one kind of mishap many times over and answers how often it tried and what went
 * wrong. Chance comes from the seed alone, so a failure that is reported can be made again.
 */

export interface Failure {
  /** What was tried, so that it can be tried again: seed, round, the input where it is short. */
  readonly what: string;
  /** What came of it. */
  readonly why: string;
}

export interface Outcome {
  readonly tries: number;
  readonly failures: readonly Failure[];
  /** What came of the tries that did not fail, in a few words. */
  readonly note?: string;
}

export interface Part {
  /** Its name in the table and on the command line. */
  readonly name: string;
  /** What is tried, in a few words. */
  readonly about: string;
  /**
   * @param scale 1 for the whole run; the share of it that is wanted in the short one, about 0.1
   * @param seed of all chance in it
   */
  run(scale: number, seed: number): Promise<Outcome>;
}

/** Does each in its order, so many at a time: browsers wait much. `does` answers for its own failures and never throws. */
export async function atOnce<T>(
  count: number,
  all: readonly T[],
  does: (one: T, at: number) => Promise<void>,
): Promise<void> {
  const left = all.entries();
  const work = async (): Promise<void> => {
    for (const [at, one] of left) await does(one, at);
  };
  await Promise.all(Array.from({ length: count }, work));
}
