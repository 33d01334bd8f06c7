/** Edits of the sample bends of the survey. */
import type { Sample } from '../job/kinds/sample.ts';
import type { Job } from '../job/types.ts';

export const addSample = (job: Job, sample: Sample): Job => withSamples(job, [...(job.survey?.samples ?? []), sample]);

/** `index`: which one in the job's list. */
export const changeSample = (job: Job, index: number, fields: Partial<Sample>): Job =>
  withSamples(
    job,
    (job.survey?.samples ?? []).map((sample, i) => (i === index ? { ...sample, ...fields } : sample)),
  );

/** Nobody read the rail. */
export const withoutRail = (job: Job, index: number): Job =>
  withSamples(
    job,
    (job.survey?.samples ?? []).map(({ rail, ...sample }, i) =>
      i === index || rail === undefined ? sample : { ...sample, rail },
    ),
  );

/** The block goes with the last thing in it. */
export const removeSample = (job: Job, index: number): Job =>
  withSamples(
    job,
    (job.survey?.samples ?? []).filter((_, i) => i !== index),
  );

function withSamples(job: Job, samples: readonly Sample[]): Job {
  const { samples: _, ...others } = job.survey ?? {};
  const { survey: __, ...rest } = job;
  const survey = { ...others, ...(samples.length > 0 && { samples }) };
  return { ...rest, ...(Object.keys(survey).length > 0 && { survey }) };
}
