/**
 * Points that the readings would let lie elsewhere just as well: taped from three places alone, a point may be on either side of their
 * plane. The guess has decided; a person should say whether it was right.
 */
import { distance, type Vec3 } from '../geometry/vector.ts';
import { pointsOf } from '../job/kinds/measurement.ts';
import { bareId, type PointId } from '../job/reference.ts';
import { placesOf, type Adjusted } from './adjust.ts';
import { networkOf, placeIn, type Surveyed } from './network.ts';
import { ALIKE, fromAllSides, unknownOf } from './settle.ts';

export interface Elsewhere {
  readonly point: PointId;
  readonly here: Vec3;
  /** Answers what was read at the point as well. */
  readonly there: Vec3;
}

/** mm. Nearer than this is the same place, found twice. */
const APART = 5;

/** One for each point that has another place, the other points left where they are; none of what nothing fixes. */
export function elsewhere(surveyed: Surveyed, adjusted: Adjusted): readonly Elsewhere[] {
  const network = networkOf(surveyed);
  if (network === null) return [];
  const { points, loose } = adjusted;
  const places = placesOf(network, adjusted);
  const open = new Set(loose.map(({ point }) => point));
  return points.flatMap(({ id, position }): readonly Elsewhere[] => {
    const ties = network.measurements.flatMap((each, index) =>
      !each.excluded && pointsOf(each).some(([, point]) => bareId(point) === id) ? [index] : [],
    );
    if (open.has(id) || ties.length === 0) return [];
    const [here, ...all] = fromAllSides(network, ties, unknownOf(network, id), places, id);
    const there = all
      .filter(({ squares }) => squares <= here!.squares + ALIKE)
      .map((one) => placeIn(network, one.places)(id))
      .filter((place) => distance(place, position) > APART)
      .toSorted((a, b) => distance(a, position) - distance(b, position));
    return there.length === 0 ? [] : [{ point: id, here: position, there: there[0]! }];
  });
}
