/** What a person calls the things of a job: their names, with the mirrored side said in words. */
import { shownName } from '../job/shown.ts';
import { bareId, isPrimed } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import type { Frame } from './types.ts';

/** The name of a tube, or of the bar that is made in pieces, with its side; the bare reference when there is neither. */
export const tubeName = ({ byId, bars }: Pick<Frame, 'byId' | 'bars'>, reference: string): string =>
  (byId.get(reference) ?? bars.get(reference))?.name ?? reference;

/** What an end stands on: its node's name, or that a bar in pieces is cut there. */
export const endNodeName = (job: Job, node: string | null): string =>
  node === null ? 'none: the bar is cut here' : nodeName(job, node);

/** A node's name; its mirror image is said so. */
export const nodeName = (job: Job, reference: string): string => named(job.nodes, reference);

/** A point's name; its mirror image is said so. */
export const pointName = (job: Job, reference: string): string => named(job.points, reference);

function named(records: readonly { id: string; name: string }[], reference: string): string {
  const id = bareId(reference);
  const name = shownName(records.find((record) => record.id === id)?.name || id);
  return isPrimed(reference) ? `${name}, mirrored` : name;
}
