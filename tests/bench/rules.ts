/** What holding a frame against rule sheets takes: all shipped ones, judged anew, and again after an edit that moves one node. */
import type { Derived } from '../../src/core/derive.ts';
import { judge } from '../../src/core/rules/judge.ts';
import { SHIPPED } from '../../src/core/rules/shipped/sheets.ts';
import { timed, type Timing } from './clock.ts';

const RUNS = 60;
const WARM_UP = 30;

/** All shipped sheets over the frame, nothing known beforehand: articles are remembered by their records, so each run has records of its own. */
export function timeJudging(frame: Derived): Timing {
  const fresh = Array.from({ length: RUNS + WARM_UP }, () => structuredClone([...SHIPPED]));
  return timed(RUNS, WARM_UP, () => judge({ ...frame, job: { ...frame.job, rules: fresh.pop()! } }));
}

/** By turns over two frames that differ by an edit: only what that touches is judged. */
export function timeJudgingAgain(frames: readonly [Derived, Derived]): Timing {
  let turn = 0;
  return timed(RUNS, WARM_UP, () => {
    const frame = frames[turn++ % 2]!;
    judge({ ...frame, job: { ...frame.job, rules: SHIPPED } });
  });
}
