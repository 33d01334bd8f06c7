/**
 * Points of the car, and not of who sits in it: a driver's shoulders are no left and right of the car, and nobody sits there while a cage is fitted. A point that
 * a node or a body line goes by is the car's, whoever else is measured by it.
 */
import { driverPoints } from '../job/kinds/envelope.ts';
import type { Point } from '../job/kinds/point.ts';
import { bareId } from '../job/reference.ts';
import { referencesOf } from '../job/references.ts';
import type { Job } from '../job/types.ts';

/** Those of `points` that are the car's, as they stand there; the very same list without drivers. */
export function pointsOfCar(
  { envelopes, nodes, bodyLines }: Pick<Job, 'envelopes' | 'nodes' | 'bodyLines'>,
  points: readonly Point[],
): readonly Point[] {
  const drivers = new Set(envelopes.flatMap((each) => (each.kind === 'driver' ? driverPoints(each).map(bareId) : [])));
  if (drivers.size === 0) return points;
  const steel = nodes.flatMap((node) => referencesOf('nodes', node)).filter(({ list }) => list === 'points');
  for (const { to } of steel) drivers.delete(bareId(to));
  for (const to of bodyLines.flatMap((line) => line.points)) drivers.delete(bareId(to));
  return points.filter(({ id }) => !drivers.has(id));
}
