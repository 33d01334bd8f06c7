/** Edits of the lines of the body. Nothing refers to a body line, so one can always be deleted. */
import type { BodyLineId, PointRef } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import { nextId } from './ids.ts';
import { appendRecord, takeOut, updateRecord, type Fields } from './records.ts';

export const addBodyLine = (job: Job, name: string, points: readonly PointRef[]): Job =>
  appendRecord(job, 'bodyLines', { id: nextId(job, 'bodyLines'), name, points });

export const updateBodyLine = (job: Job, id: BodyLineId, fields: Fields<'bodyLines'>): Job =>
  updateRecord(job, 'bodyLines', id, fields);

export const removeBodyLine = (job: Job, id: BodyLineId): Job => takeOut(job, 'bodyLines', new Set([id]));
