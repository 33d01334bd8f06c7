/** What the places of the car are called that tubes are measured to. */
import type { Trim } from '../gaps/trim-places.ts';
import { shownName } from '../job/shown.ts';
import type { Job } from '../job/types.ts';
import { pointName } from '../solve/names.ts';

/** "Roof rail at B-pillar, left"; "the body line Roof rail, left". */
export function trimName(job: Job, { kind, id }: Trim): string {
  if (kind === 'point') return pointName(job, id);
  return `the body line ${shownName(job.bodyLines.find((line) => line.id === id)!.name)}`;
}
