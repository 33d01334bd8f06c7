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

/**
 * The job as the variant has it drawn. What was done in the shop since stays: sticks, what was sawn, made, bent, read, paid, printed, and the greatest number that a tube was given; so does what is
 * kept by name. Faults where the variant's text is no job, or has not the tube that steel was cut for.
 */
export function backToVariant(job: Job, id: string): Edited {
  const variant = findRecord(job, 'variants', id);
  if (variant === undefined) return job;
  const parsed = parseJob(variant.text);
  if (!parsed.ok) return parsed.faults.map((fault) => inVariant(fault));
  const { job: then } = parsed;
  const done = Object.fromEntries(DONE.map((key) => [key, job[key]])) as Pick<Job, (typeof DONE)[number]>;
  const { took } = job.quote ?? {};
  const lastNumber = Math.max(job.lastNumber ?? 0, then.lastNumber ?? 0);
  return {
    ...then,
    ...done,
    ...(job.stock && { stock: job.stock }),
    ...(took && { quote: { ...then.quote, took } }),
    ...(lastNumber > 0 && { lastNumber }),
  };
}

/** What stands for steel, paper and readings, and not for the drawing. */
const DONE = [
  'stickSorts',
  'spares',
  'sawn',
  'made',
  'bent',
  'pulls',
  'printed',
  'certificates',
  'photos',
  'variants',
] as const;

const inVariant = (fault: Fault): Fault => ({ ...fault, message: `${fault.place}: ${fault.message}` });
