/** Edits of where the car's own axes are. */
import { sameData } from '../job/equal.ts';
import type { Hold } from '../job/kinds/hold.ts';
import type { Job } from '../job/types.ts';
import type { Datum } from '../survey/datum.ts';

/** The job with the car's axes laid so; what was held before is held no more. The same job where they lie so already. */
export function setDatum(job: Job, { level, height, centre, zero, station }: Datum): Job {
  const holds: readonly Hold[] = [
    ...level.map((point): Hold => ({ point, axis: 'z', value: height })),
    ...centre.map(([point, and]): Hold => ({ point, ...(and !== undefined && { and }), axis: 'y', value: 0 })),
    { point: zero, axis: 'x', value: station },
  ];
  if (job.survey?.askew === true && sameData(job.holds, holds)) return job;
  return { ...job, survey: { ...job.survey, askew: true }, holds };
}

/** The car stands square to its lines again: nothing is held. */
export function withoutDatum(job: Job): Job {
  if (job.survey?.askew === undefined && job.holds.length === 0) return job;
  const { askew: _, ...rest } = job.survey ?? {};
  const { survey: __, ...others } = job;
  return { ...others, ...(Object.keys(rest).length > 0 && { survey: rest }), holds: [] };
}
