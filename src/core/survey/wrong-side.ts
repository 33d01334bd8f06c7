/** Points that were measured on the other side of the car than their names say: an offset to the right that was typed without its minus. */
import type { Measurement } from '../job/kinds/measurement.ts';
import type { Job } from '../job/types.ts';
import type { PointId } from '../job/reference.ts';
import { isMeasured } from './network.ts';
import { measuredPoints } from './measured-points.ts';
import { sideInName } from './point-pairs.ts';
import { pointsOfCar } from './points-of-car.ts';

export interface OnWrongSide {
  readonly point: PointId;
  /** mm from the centre plane, on the side that its name does not say. */
  readonly by: number;
  /** Readings of its offset that are typed on that side. */
  readonly offsets: readonly Measurement[];
}

/** mm. Nearer to the centre plane a point may be on either side of it. */
const NEAR = 30;

/** In the job's order. A driver's points tell his own sides. */
export const onWrongSide = (job: Job): readonly OnWrongSide[] =>
  pointsOfCar(job, measuredPoints(job)).flatMap((point) => {
    const side = sideInName(point.name);
    const offset = point.position[1];
    if (side === null || !isMeasured(point) || side * offset > -NEAR) return [];
    const offsets = job.measurements.filter(
      (each) => each.kind === 'coordinate' && each.axis === 'y' && each.point === point.id && side * each.value < 0,
    );
    return [{ point: point.id, by: Math.abs(offset), offsets }];
  });
