/** How far what is measured and made comes out off: one standard deviation each. */
import { FIRST_ACCURACY, type Accuracy } from '../job/kinds/accuracy.ts';
import type { Job } from '../job/types.ts';

/** Other deviations for these; the rest stay as they are, or as they are before anybody has said. */
export const setAccuracy = (job: Job, fields: Partial<Accuracy>): Job => {
  const before = job.accuracy ?? FIRST_ACCURACY;
  const next = { ...before, ...fields };
  return (Object.keys(next) as (keyof Accuracy)[]).every((key) => next[key] === before[key])
    ? job
    : { ...job, accuracy: next };
};
