/** What a job says of the fitting of its cage in the car, mm. */
import type { Job } from '../job/types.ts';

export const setTorchRoom = (job: Job, torchRoom: number): Job =>
  job.torchRoom === torchRoom ? job : { ...job, torchRoom };

export const setRoofReach = (job: Job, roofReach: number): Job =>
  job.roofReach === roofReach ? job : { ...job, roofReach };
