/**
 * One item of a slow stage, worked on away from the moment: in the page's spare time, or beside the page in a worker. What comes of
 * it is the same; one that throws says so, and is an answer like any other.
 */
import type { Derived } from '../core/derive.ts';
import type { SlowStage } from '../core/stages/slow-stage.ts';

export type AnyStage = SlowStage<object, unknown>;

/** What came of an item: its result, or why there is none. */
export type Came<Result> = { readonly ok: true; readonly value: Result } | { readonly ok: false; readonly why: string };

/** Works on the item of that frame, and calls `heard` once with what came of it, later; answers how to stop. */
export type DoItem = (
  derived: Derived,
  stage: AnyStage,
  item: object,
  heard: (came: Came<unknown>) => void,
) => () => void;

/** What came of the work, also where that throws. */
export function attempt<Result>(work: () => Result): Came<Result> {
  try {
    return { ok: true, value: work() };
  } catch (error) {
    return { ok: false, why: error instanceof Error ? error.message : String(error) };
  }
}

/** The same of work that ends later. */
export async function attemptLoading<Result>(work: () => Promise<Result>): Promise<Came<Result>> {
  try {
    return { ok: true, value: await work() };
  } catch (error) {
    return { ok: false, why: error instanceof Error ? error.message : String(error) };
  }
}

/** What a stage does with an item; the page has to fetch it first. */
export type RunOf = (stage: AnyStage) => ((item: object) => unknown) | Promise<(item: object) => unknown>;

/** In this very thread, each item in one go. `whenIdle` runs a task once, and answers how to drop it. */
export const inSpareTime =
  (whenIdle: (task: () => void) => () => void, runOf: RunOf): DoItem =>
  (_, stage, item, heard) => {
    let isDropped = false;
    const done = (run: (item: object) => unknown): void => {
      if (!isDropped) heard(attempt(() => run(item)));
    };
    async function fetched(run: Promise<(item: object) => unknown>): Promise<void> {
      let work: (item: object) => unknown;
      try {
        work = await run;
      } catch (error) {
        // What cannot be fetched is an answer, like work that throws.
        work = () => {
          throw error;
        };
      }
      done(work);
    }
    const drop = whenIdle(() => {
      const run = runOf(stage);
      if (run instanceof Promise) void fetched(run);
      else done(run);
    });
    return () => {
      isDropped = true;
      drop();
    };
  };

/** The work of the stages as the program has it, fetched when it is first asked for. */
export const fetchedRun: RunOf = async ({ name }) => {
  const { ALL_WORK } = await import('../core/compare/work.ts');
  const work = ALL_WORK.find((each) => each.name === name);
  if (work === undefined) throw new Error('That wants a worker, which this browser does not give.');
  return work.run;
};
