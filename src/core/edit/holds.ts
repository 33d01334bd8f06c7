/** Edits of coordinates that are held: of a measured point what is laid down instead of measured. */
import type { Axis } from '../geometry/vector.ts';
import type { Hold } from '../job/kinds/hold.ts';
import { bareId, type PointId } from '../job/reference.ts';
import type { Job } from '../job/types.ts';

/** Lays a coordinate of a measured point down, mm: it is not asked for any more. */
export const holdCoordinate = (job: Job, point: PointId, axis: Axis, value: number): Job =>
  withHolds(job, [...job.holds.filter((hold) => !isOf(hold, point) || hold.axis !== axis), { point, axis, value }]);

export const letCoordinateGo = (job: Job, point: PointId, axis: Axis): Job =>
  withHolds(
    job,
    job.holds.filter((hold) => !isOf(hold, point) || hold.axis !== axis),
  );

/** Without what is held of these points. */
export const withoutHolds = (job: Job, points: ReadonlySet<PointId>): Job =>
  withHolds(
    job,
    job.holds.filter(({ point, and }) => !points.has(bareId(point)) && !points.has(bareId(and ?? point))),
  );

/** By itself, or in the mean with another. */
const isOf = (hold: Hold, point: PointId): boolean =>
  bareId(hold.point) === point || bareId(hold.and ?? hold.point) === point;

const withHolds = (job: Job, holds: Job['holds']): Job =>
  holds.length === job.holds.length && holds.every((hold, i) => hold === job.holds[i]) ? job : { ...job, holds };
