/** What each of the fast stages takes of a derivation. */
import type { Derived } from '../../src/core/derive.ts';
import type { Job } from '../../src/core/job/types.ts';
import { FAST, type Made } from '../../src/core/stages/fast.ts';
import { timeOf, timingOf, type Timing } from './clock.ts';

/** Of `runs` derivations, each of the next job that is handed out and on what was derived before it; `warmUp` are not counted. */
export function timeStages(
  runs: number,
  warmUp: number,
  next: () => { readonly job: Job; readonly before?: Derived },
): ReadonlyMap<string, Timing> {
  const times = new Map<string, number[]>(FAST.map(({ name }) => [name, []]));
  for (let i = -warmUp; i < runs; i++) {
    const { job, before } = next();
    const made = { job } as Made;
    for (const { name, run } of FAST) {
      const time = timeOf(() => {
        const outcome = run(made, before);
        if (!outcome.ok) throw new Error(JSON.stringify(outcome.faults));
        Object.assign(made, { [name]: outcome.value });
      });
      if (i >= 0) times.get(name)!.push(time);
    }
  }
  return new Map([...times].map(([name, each]) => [name, timingOf(each)]));
}
