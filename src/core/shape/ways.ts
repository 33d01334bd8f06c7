/** The ways in which a person gives a place: the kinds of place, of which two can be given in two ways. */
import { placeAt, type Path } from '../geometry/path.ts';
import { placesInPlane } from '../geometry/plane-places.ts';
import { AXIS_INDEX, type Axis } from '../geometry/vector.ts';
import type { FrameNode } from '../job/kinds/node.ts';
import type { Place } from '../job/places.ts';
import type { Coordinate } from '../job/places/coordinate.ts';
import { coordinateOf } from '../solve/solved.ts';
import type { Frame } from '../solve/types.ts';

/** `clear` is a place on a point that stands off it by a gap; `until` one on a tube where the tube has a coordinate. */
export type Way = Place['kind'] | 'clear' | 'until';

/** The way in which this place is given. */
export function wayOf(at: Place): Way {
  if (at.kind === 'point' && at.clear !== undefined) return 'clear';
  if (at.kind === 'on' && at.until !== undefined) return 'until';
  return at.kind;
}

/** Those of the nodes whose places are given in this way, in their order. */
export const givenInWay = (nodes: readonly FrameNode[], way: Way): FrameNode[] =>
  nodes.filter(({ at }) => wayOf(at) === way);

/** The coordinate, mm, that the path has at `along` mm from its start, and for which time it has it there: 1 is the first. */
export function untilHere(path: Path, axis: Axis, along: number): { readonly value: number; readonly nth: number } {
  const value = placeAt(path, along).point[AXIS_INDEX[axis]];
  return { value, nth: nearestNth(path, axis, value, along) ?? 1 };
}

/** Of the places at which the path has the coordinate, the one nearest `along`, counted from 1; null where it never has it. */
export function nearestNth(path: Path, axis: Axis, value: number, along: number): number | null {
  const away = placesInPlane(path, AXIS_INDEX[axis], value).map(({ at }) => Math.abs(at - along));
  return away.length === 0 ? null : away.indexOf(Math.min(...away)) + 1;
}

/** What the coordinate along that axis is in the frame, mm. */
export const comesTo = ({ job, nodes }: Frame, given: Coordinate, axis: Axis): number =>
  coordinateOf(given, axis, {
    node: (reference) => nodes.get(reference)!,
    point: (id) => job.points.find((point) => point.id === id)!,
  });
