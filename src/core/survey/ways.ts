/** What a person says that was measured, by the word of the shop, and the readings that it comes to. */
import type { Axis } from '../geometry/vector.ts';
import type { Measurement } from '../job/kinds/measurement.ts';
import type { PointRef } from '../job/reference.ts';

/** In the order in which a person is offered them. */
export const WAYS = ['distance', 'height', 'offset', 'station', 'width', 'level', 'slope', 'plumb'] as const;

export type Way = (typeof WAYS)[number];

/** A measurement that is in no list yet. */
export type NewMeasurement = Measurement extends infer M ? (M extends Measurement ? Omit<M, 'id'> : never) : never;

/** The axis that is read. */
export const COORDINATE_OF = { station: 'x', offset: 'y', height: 'z' } as const satisfies Partial<Record<Way, Axis>>;

/** The way that a coordinate along that axis is read. */
export const WAY_ALONG = { x: 'station', y: 'offset', z: 'height' } as const satisfies Record<Axis, Way>;

/** Whether it is read at one point of the car alone. */
export const isAtOne = (way: Way): way is 'height' | 'offset' | 'station' | 'width' =>
  way === 'width' || way in COORDINATE_OF;

/** The readings, one but for a plumb line: that is two differences of 0, along and to the side. `to` counts for nothing where one point is enough; `value` mm, degrees of a slope, nothing of a plumb line. */
export function readingsOf(way: Way, from: PointRef, to: PointRef, value: number): readonly NewMeasurement[] {
  switch (way) {
    case 'distance':
      return [{ kind: 'distance', from, to, value }];
    case 'width':
      return [{ kind: 'width', point: from, value }];
    case 'level':
      return [{ kind: 'difference', from, to, axis: 'z', value }];
    case 'slope':
      return [{ kind: 'inclination', from, to, value }];
    case 'plumb':
      return (['x', 'y'] as const).map((axis) => ({ kind: 'difference', from, to, axis, value: 0 }));
    default:
      return [{ kind: 'coordinate', point: from, axis: COORDINATE_OF[way], value }];
  }
}

/** What kind of reading it comes to: which instrument reads it. */
export const kindRead = (way: Way): Measurement['kind'] => readingsOf(way, '', '', 0)[0]!.kind;

/** What it is pictured as: a difference along the car or aside only where it is the plumb line's, of 0. */
export const pictureOf = (measurement: Measurement): Way | 'apart' =>
  wayOf(measurement) === 'plumb' && measurement.value !== 0 ? 'apart' : wayOf(measurement);

/** The word that it was said by: of a difference along the car or aside the plumb line's, whatever it reads. */
export function wayOf(measurement: Measurement): Way {
  switch (measurement.kind) {
    case 'coordinate':
      return measurement.axis === 'x' ? 'station' : measurement.axis === 'y' ? 'offset' : 'height';
    case 'difference':
      return measurement.axis === 'z' ? 'level' : 'plumb';
    case 'inclination':
      return 'slope';
    default:
      return measurement.kind;
  }
}
