/** Edits of the boxes that tubes must keep clear of. Nothing refers to a box, so one can always be deleted. */
import type { EnvelopeId } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import { nextId } from './ids.ts';
import { appendRecord, takeOut, updateRecord, type Fields } from './records.ts';

/** A new box, about a helmet's size, at head height on the centre plane, with two inches to keep: a start to edit from. */
export const addEnvelope = (job: Job): Job =>
  appendRecord(job, 'envelopes', {
    id: nextId(job, 'envelopes'),
    name: `Box ${job.envelopes.length + 1}`,
    kind: 'box',
    centre: [0, 0, 1000],
    size: [330, 280, 330],
    rotation: [0, 0, 0],
    gap: 50.8,
  });

export const updateEnvelope = (job: Job, id: EnvelopeId, fields: Fields<'envelopes'>): Job =>
  updateRecord(job, 'envelopes', id, fields);

export const removeEnvelope = (job: Job, id: EnvelopeId): Job => takeOut(job, 'envelopes', new Set([id]));
