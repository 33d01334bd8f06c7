/** Edits of measured points. A point is moved, and the nodes that stand on it follow. */
import type { Vec3 } from '../geometry/vector.ts';
import type { PointId } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import { nextId } from './ids.ts';
import { appendRecord, updateRecord, type Edited } from './records.ts';
import { removeUnused } from './references.ts';

export const addPoint = (job: Job, name: string, position: Vec3): Job =>
  appendRecord(job, 'points', { id: nextId(job, 'points'), name, position });

export const movePoint = (job: Job, id: PointId, position: Vec3): Job => updateRecord(job, 'points', id, { position });

export const renamePoint = (job: Job, id: PointId, name: string): Job => updateRecord(job, 'points', id, { name });

/** Refused while nodes or body lines stand on it. */
export const removePoint = (job: Job, id: PointId): Edited => removeUnused(job, 'points', id);
