/** Whether plain data has the shape of a diff, for diffs that were kept somewhere and come back. */
import * as v from 'valibot';
import type { JobDiff } from './diff.ts';
import { COLLECTIONS } from './validate.ts';

const change = v.object({
  key: v.string(),
  before: v.exactOptional(v.unknown()),
  after: v.exactOptional(v.unknown()),
});
const ids = v.array(v.string());
const collection = v.object({
  records: v.array(change),
  order: v.exactOptional(v.object({ before: ids, after: ids })),
});
const diff = v.object({ head: v.array(change), collections: v.record(v.picklist(COLLECTIONS), collection) });

/** Shape alone: whether it fits a job is for fitsJob to tell. */
export const isJobDiff = (value: unknown): value is JobDiff => v.is(diff, value);
