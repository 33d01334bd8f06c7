/** Edits of the variants that a job keeps of itself. */
import type { Fault } from '../job/fault.ts';
import { parseJob } from '../job/parse.ts';
import { serialiseJob } from '../job/serialise.ts';
import type { Job } from '../job/types.ts';
import { nextId } from './ids.ts';
import { appendRecord, findRecord, takeOut, updateRecord, type Edited } from './records.ts';

/** The job as it stands, kept under a name; `on` the day, as 2026-03-02. */
export const keepVariant = (job: Job, name: string, on: string): Job =>
  appendRecord(job, 'variants', {
    id: nextId(job, 'variants'),
    name,
    on,
    text: serialiseJob({ ...job, variants: [] }),
  });

export const nameVariant = (job: Job, id: string, name: string): Job => updateRecord(job, 'variants', id, { name });

export const removeVariant = (job: Job, id: string): Job => takeOut(job, 'variants', new Set([id]));

/** The job as the variant has it; what is kept by name stays kept. Faults where the variant's text is no job. */
export function backToVariant(job: Job, id: string): Edited {
  const variant = findRecord(job, 'variants', id);
  if (variant === undefined) return job;
  const parsed = parseJob(variant.text);
  return parsed.ok ? { ...parsed.job, variants: job.variants } : parsed.faults.map((fault) => inVariant(fault));
}

const inVariant = (fault: Fault): Fault => ({ ...fault, message: `${fault.place}: ${fault.message}` });
