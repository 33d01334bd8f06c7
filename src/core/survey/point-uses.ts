/** What else than nodes and body lines a point of the survey has to do with: it goes with the point, or keeps it from going. */
import { driverPoints } from '../job/kinds/envelope.ts';
import { pointsOf } from '../job/kinds/measurement.ts';
import { bareId, type PointId, type PointRef } from '../job/reference.ts';
import type { Job } from '../job/types.ts';

/** How many of each. */
export interface PointUses {
  readonly readings: number;
  readonly holds: number;
  /** Of scans. */
  readonly pairs: number;
  /** Of tubes that were measured to stand at it. */
  readonly seats: number;
  /** That are measured by it. */
  readonly drivers: number;
}

export function usesOfPoint({ measurements, holds, scans, bent, envelopes }: Job, id: PointId): PointUses {
  const isIt = (ref: PointRef | undefined): boolean => ref !== undefined && bareId(ref) === id;
  return {
    readings: measurements.filter((reading) => pointsOf(reading).some(([, ref]) => isIt(ref))).length,
    holds: holds.filter(({ point, and }) => isIt(point) || isIt(and)).length,
    pairs: scans.flatMap(({ pairs }) => pairs).filter(({ point }) => isIt(point)).length,
    drivers: envelopes.filter((each) => each.kind === 'driver' && driverPoints(each).some(isIt)).length,
    seats: bent.flatMap(({ seat = [] }) => seat).filter(({ point }) => isIt(point)).length,
  };
}
