/** The points of a job where they were measured: what every reader of a point's place goes by. */
import { mirrored, type Vec3 } from '../geometry/vector.ts';
import { mapKeeping } from '../job/map-keeping.ts';
import type { Point } from '../job/kinds/point.ts';
import type { Job } from '../job/types.ts';
import { bareId, isPrimed, type PointId, type PointRef } from '../job/reference.ts';
import { remembered } from '../remembered.ts';
import { adjust, type Adjusted } from './adjust.ts';
import type { Surveyed } from './network.ts';

/** Each point where its measurements put it, mm; typed ones are the very same, and the whole list is where none is measured. */
export function measuredPoints(surveyed: Surveyed): readonly Point[] {
  const adjusted = adjust(surveyed);
  return adjusted === null || adjusted.points.length === 0 ? surveyed.points : placedBy(adjusted)(surveyed.points);
}

const placedBy = remembered(({ points: placed }: Adjusted) => {
  const places = new Map(placed.map(({ id, position }) => [id, position]));
  return remembered((points: readonly Point[]) =>
    mapKeeping(points, (point) => {
      const position = places.get(point.id);
      return position === undefined ? point : { ...point, position };
    }),
  );
});

/** The job with its points there; the very same where none is measured. */
export function withMeasuredPoints(job: Job): Job {
  const points = measuredPoints(job);
  return points === job.points ? job : { ...job, points };
}

/** Where the point, or with a prime its image, is; null where there is none. From 0 subtracted, not negated: a file has no negative zero. */
export function placeOfPoint(surveyed: Surveyed, ref: PointRef): Vec3 | null {
  const place = byId(measuredPoints(surveyed)).get(bareId(ref))?.position;
  if (place === undefined) return null;
  return isPrimed(ref) ? mirrored(place) : place;
}

const byId = remembered(
  (points: readonly Point[]): ReadonlyMap<PointId, Point> => new Map(points.map((point) => [point.id, point])),
);
