/** A coordinate of a measured point that is not measured but laid down: the corner that zero is at, the line that the car stands along. */
import * as v from 'valibot';
import type { Axis } from '../../geometry/vector.ts';
import { fault } from '../fault.ts';
import { bareId, type PointId } from '../reference.ts';
import { coordinate } from './fields.ts';
import type { Kind } from './kind.ts';

export interface Hold {
  /** With a prime, of its image: the offset is then the other way. */
  readonly point: PointId;
  /** The mean of both is held, as of two points on either side of the centre plane. Absent: the point by itself. */
  readonly and?: PointId;
  readonly axis: Axis;
  /** mm, exact. */
  readonly value: number;
}

export const holdKind: Kind<Hold> = {
  inWords: 'a coordinate that is held',
  within: ['survey', 'hold'],
  shape: v.looseObject({
    point: v.string(),
    and: v.exactOptional(v.string()),
    axis: v.picklist(['x', 'y', 'z']),
    value: coordinate,
  }),
  keys: ['point and axis value'],
  beyondShape({ point, and, axis }, at, index, records) {
    const isHeld = (id: PointId): number =>
      records.findIndex(
        (each) =>
          each.axis === axis && [each.point, each.and ?? each.point].some((other) => bareId(other) === bareId(id)),
      );
    const twice = [point, ...(and === undefined ? [] : [and])].find((id) => isHeld(id) !== index);
    return [
      { place: `${at}.point`, list: 'points', to: point },
      ...(and === undefined ? [] : [{ place: `${at}.and`, list: 'points' as const, to: and }]),
      ...(and !== undefined && bareId(and) === bareId(point) ? [fault(`${at}.and`, 'the same point')] : []),
      ...(twice === undefined ? [] : [fault(at, `is held already, by survey.hold[${isHeld(twice)}]`)]),
    ];
  },
};
