/** Edits of the lines of the body. Nothing refers to a body line, so one can always be deleted. */
import type { BodyLineId, PointRef } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import { nextId } from './ids.ts';
import { withLeastGap } from './least-gap.ts';
import { appendRecord, changeRecord, takeOut, updateRecord, type Fields } from './records.ts';

export const addBodyLine = (job: Job, name: string, points: readonly PointRef[]): Job =>
  appendRecord(job, 'bodyLines', { id: nextId(job, 'bodyLines'), name, points });

export const updateBodyLine = (job: Job, id: BodyLineId, fields: Fields<'bodyLines'>): Job =>
  updateRecord(job, 'bodyLines', id, fields);

/** The least gap that is wanted to it, mm; null where none is asked. */
export const setLineGap = (job: Job, id: BodyLineId, gap: number | null): Job =>
  changeRecord(job, 'bodyLines', id, (line) => withLeastGap(line, gap));

export const removeBodyLine = (job: Job, id: BodyLineId): Job => takeOut(job, 'bodyLines', new Set([id]));
