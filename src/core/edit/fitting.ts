/** What a job says of the fitting of its cage in the car, mm. */
import type { Job } from '../job/types.ts';

export const setTorchRoom = (job: Job, torchRoom: number): Job =>
  job.torchRoom === torchRoom ? job : { ...job, torchRoom };

export const setRoofReach = (job: Job, roofReach: number): Job =>
  job.roofReach === roofReach ? job : { ...job, roofReach };

/** null: as its points were measured. */
export function setDoorOpening(job: Job, doorOpening: number | null): Job {
  if ((job.doorOpening ?? null) === doorOpening) return job;
  const { doorOpening: _before, ...rest } = job;
  return doorOpening === null ? rest : { ...rest, doorOpening };
}
