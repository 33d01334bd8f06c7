/** Edits of measured points. A point is moved, and the nodes that stand on it follow. */
import { equal, type Vec3 } from '../geometry/vector.ts';
import type { Point } from '../job/kinds/point.ts';
import type { PointId } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import { isMeasured } from '../survey/network.ts';
import { withoutHolds } from './holds.ts';
import { nextId } from './ids.ts';
import { appendRecord, changeRecord, updateRecord, type Edited } from './records.ts';
import { removeUnused } from './references.ts';

export const addPoint = (job: Job, name: string, position: Vec3): Job =>
  appendRecord(job, 'points', { id: nextId(job, 'points'), name, position });

/** Its own place is said: the point is no guess any more, and not from a scan. One whose place comes of measurements stays. */
export const movePoint = (job: Job, id: PointId, position: Vec3): Job =>
  changeRecord(job, 'points', id, (point) =>
    isMeasured(point) || equal(point.position, position) ? point : { ...notFromScan(withoutGuess(point)), position },
  );

/** The point is right as it stands. */
export const confirmPoint = (job: Job, id: PointId): Job => changeRecord(job, 'points', id, withoutGuess);

function withoutGuess(point: Point): Point {
  if (point.guessed === undefined) return point;
  const { guessed: _, ...rest } = point;
  return rest;
}

/** It stands elsewhere than the scan says: what the scan said of it goes. */
export function notFromScan(point: Point): Point {
  if (point.from === undefined) return point;
  const { from: _, accuracy: __, ...rest } = point;
  return rest;
}

export const renamePoint = (job: Job, id: PointId, name: string): Job => updateRecord(job, 'points', id, { name });

/** Whether it was measured on what is not the real seat or door. */
export const setStandIn = (job: Job, id: PointId, isStandIn: boolean): Job =>
  changeRecord(job, 'points', id, (point) => {
    const { standIn: _, ...rest } = point;
    return isStandIn ? { ...rest, standIn: true } : rest;
  });

/** mm of trim that goes over it; null where none does. */
export const setTrim = (job: Job, id: PointId, trim: number | null): Job =>
  changeRecord(job, 'points', id, (point) => {
    const { trim: _, ...rest } = point;
    return trim === null ? rest : { ...rest, trim };
  });

/** Refused while nodes or body lines stand on it. What was measured at it goes too, and what is held of it. */
export const removePoint = (job: Job, id: PointId): Edited =>
  removeUnused(withoutHolds(job, new Set([id])), 'points', id);
