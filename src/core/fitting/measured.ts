/** The places of the car that a fitting goes by: what was measured, and no guess; of nobody who sits in it. */
import { trimPlaces, type TrimPlace } from '../gaps/trim-places.ts';
import { bareId } from '../job/reference.ts';
import { remembered } from '../remembered.ts';
import type { Frame } from '../solve/types.ts';
import { pointsOfCar } from '../survey/points-of-car.ts';

/** As trimPlaces has them in a job without points that are a guess and lines through one: a guess stands in for no mirror image either. Worked out once a frame. */
export const measuredPlaces = remembered(({ job, tubes }: Frame): readonly TrimPlace[] => {
  const points = pointsOfCar(job, job.points).filter((point) => !point.guessed);
  const there = new Set(points.map(({ id }) => id));
  const bodyLines = job.bodyLines.filter((line) => line.points.every((to) => there.has(bareId(to))));
  return trimPlaces({ job: { ...job, points, bodyLines }, tubes });
});
