/** How much room the torch wants, mm. */
import type { Job } from '../job/types.ts';

export const setTorchGap = (job: Job, torchGap: number): Job =>
  job.torchGap === torchGap ? job : { ...job, torchGap };
