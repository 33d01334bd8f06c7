/** A coordinate of a measured point that is not measured but laid down: the corner that zero is at, the line that the car stands along. */
import * as v from 'valibot';
import type { Axis } from '../../geometry/vector.ts';
import { fault } from '../fault.ts';
import type { PointId } from '../reference.ts';
import { coordinate } from './fields.ts';
import type { Kind } from './kind.ts';

export interface Hold {
  readonly point: PointId;
  readonly axis: Axis;
  /** mm, exact. */
  readonly value: number;
}

export const holdKind: Kind<Hold> = {
  inWords: 'a coordinate that is held',
  within: ['survey', 'hold'],
  shape: v.looseObject({ point: v.string(), axis: v.picklist(['x', 'y', 'z']), value: coordinate }),
  keys: ['point axis value'],
  beyondShape({ point, axis }, at, index, records) {
    const first = records.findIndex((each) => each.point === point && each.axis === axis);
    return [
      { place: `${at}.point`, list: 'points', to: point },
      ...(first === index ? [] : [fault(at, `is held already, by survey.hold[${first}]`)]),
    ];
  },
};
