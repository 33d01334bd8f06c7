/**
 * Edits of the log of pulls, and of the batch whose pulls a member goes by. A pull has no id, as nothing refers to one:
 * its index in the log names it. An edit at an index that is not there gives the same job back.
 */
import { mapKeeping } from '../job/map-keeping.ts';
import type { Pull } from '../job/kinds/pull.ts';
import type { MemberId } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import { changeRecord, patched } from './records.ts';

/** The pull comes last in the log. */
export const addPull = (job: Job, pull: Pull): Job => ({ ...job, pulls: [...job.pulls, withBatch(pull, pull.batch)] });

/** The pull with these fields; an empty batch takes the batch away. */
export function updatePull(job: Job, index: number, fields: Partial<Pull>): Job {
  const { batch, ...rest } = fields;
  const pulls = mapKeeping(job.pulls, (pull, at) =>
    at === index ? withBatch(patched<Pull>(pull, rest), batch ?? pull.batch) : pull,
  );
  return pulls === job.pulls ? job : { ...job, pulls };
}

export const removePull = (job: Job, index: number): Job =>
  job.pulls[index] === undefined ? job : { ...job, pulls: job.pulls.toSpliced(index, 1) };

/** The heat or batch that the member's tube is cut from; '' when it is not known. */
export const setBatch = (job: Job, id: MemberId, batch: string): Job =>
  changeRecord(job, 'members', id, (member) => withBatch(member, batch));

/** The record with this batch, without the field where it is empty; the same record when it has it already. */
function withBatch<R extends { readonly batch?: string }>(record: R, batch: string | undefined): R {
  if (batch !== undefined && batch !== '') return record.batch === batch ? record : { ...record, batch };
  if (!('batch' in record)) return record;
  const { batch: _, ...rest } = record;
  return rest as R;
}
