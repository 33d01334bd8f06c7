/** Edits of the sample bends of the survey; one that changes nothing gives the same job back. */
import { mapKeeping } from '../job/map-keeping.ts';
import type { Sample } from '../job/kinds/sample.ts';
import type { Job } from '../job/types.ts';

export const addSample = (job: Job, sample: Sample): Job => withSamples(job, [...samplesOf(job), sample]);

/** `index`: which one in the job's list. */
export const changeSample = (job: Job, index: number, fields: Partial<Sample>): Job =>
  withSamples(
    job,
    mapKeeping(samplesOf(job), (sample, i) => (i === index ? { ...sample, ...fields } : sample)),
  );

/** Nobody read the rail. */
export const withoutRail = (job: Job, index: number): Job =>
  withSamples(
    job,
    mapKeeping(samplesOf(job), (sample, i) => {
      const { rail: _, ...rest } = sample;
      return i === index ? rest : sample;
    }),
  );

/** The block goes with the last thing in it. */
export function removeSample(job: Job, index: number): Job {
  const samples = samplesOf(job);
  return index in samples ? withSamples(job, samples.toSpliced(index, 1)) : job;
}

const NONE: readonly Sample[] = [];
const samplesOf = ({ survey }: Job): readonly Sample[] => survey?.samples ?? NONE;

function withSamples(job: Job, samples: readonly Sample[]): Job {
  if (samples === samplesOf(job)) return job;
  const { samples: _, ...others } = job.survey ?? {};
  const { survey: __, ...rest } = job;
  const survey = { ...others, ...(samples.length > 0 && { samples }) };
  return { ...rest, ...(Object.keys(survey).length > 0 && { survey }) };
}
