/** What a person calls the things of a job: their names, with the mirrored side said in words. */
import { shownName } from '../job/shown.ts';
import { bareId, isPrimed } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import type { Frame } from './types.ts';

/** A tube's name with its side; the bare reference when there is no such tube. */
export const tubeName = (frame: Frame, reference: string): string => frame.byId.get(reference)?.name ?? reference;

/** A node's name; its mirror image is said so. */
export const nodeName = (job: Job, reference: string): string => named(job.nodes, reference);

/** A point's name; its mirror image is said so. */
export const pointName = (job: Job, reference: string): string => named(job.points, reference);

function named(records: readonly { id: string; name: string }[], reference: string): string {
  const id = bareId(reference);
  const name = shownName(records.find((record) => record.id === id)?.name || id);
  return isPrimed(reference) ? `${name}, mirrored` : name;
}
