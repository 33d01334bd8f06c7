/** A node on a member. */
import * as v from 'valibot';
import type { Axis, Vec3 } from '../../geometry/vector.ts';
import { chosenByKey } from '../kinds/chosen.ts';
import { bendNumber, coordinate, count, offset } from '../kinds/fields.ts';
import type { Part } from '../kinds/kind.ts';
import type { TubeRef } from '../reference.ts';
import { COORDINATE_KEYS, coordinateReferences, coordinateShape, type Coordinate } from './coordinate.ts';

/**
 * A place on another member's real centreline, arcs included: so far from an end, so far from a bend (1 = first from end A), or
 * where the tube has a coordinate for the nth time, counted from end A.
 */
export type OnMember = {
  readonly kind: 'on';
  readonly member: TubeRef;
  /** Moves the node off the axis, car axes, mm. */
  readonly offset: Vec3;
} & (FromEnd | FromBend | UntilCoordinate);

interface FromEnd {
  readonly from: 'start' | 'end';
  readonly distance: number;
  readonly bend?: never;
  readonly where?: never;
  readonly until?: never;
  readonly nth?: never;
}
interface FromBend {
  readonly bend: number;
  readonly where: 'start' | 'middle' | 'end';
  readonly distance: number;
  readonly from?: never;
  readonly until?: never;
  readonly nth?: never;
}
interface UntilCoordinate {
  readonly until: { readonly axis: Axis } & Coordinate;
  readonly nth: number;
  readonly from?: never;
  readonly bend?: never;
  readonly where?: never;
  readonly distance?: never;
}

const always = { kind: v.literal('on'), member: v.string(), offset };
const none = v.exactOptional(v.never());
const notBeside = (other: string) => v.exactOptional(v.never(`not beside "${other}"`));

export const onPlace = {
  shape: chosenByKey(
    ['from', 'until', 'bend'],
    [
      v.looseObject({
        ...always,
        from: v.picklist(['start', 'end']),
        bend: notBeside('from'),
        where: notBeside('from'),
        until: notBeside('from'),
        nth: notBeside('from'),
        distance: coordinate,
      }),
      v.looseObject({
        ...always,
        until: coordinateShape({ axis: v.picklist(['x', 'y', 'z']) }),
        nth: v.optional(count, 1),
        from: none,
        bend: notBeside('until'),
        where: notBeside('until'),
        distance: notBeside('until'),
      }),
      v.looseObject(
        {
          ...always,
          bend: bendNumber,
          where: v.picklist(['start', 'middle', 'end']),
          from: none,
          until: none,
          nth: notBeside('bend'),
          distance: v.optional(coordinate, 0),
        },
        (issue) => (issue.expected === '"bend"' ? 'missing, and there is no "from" or "until" either' : ''),
      ),
    ],
  ),
  keys: ['kind member from bend where distance until nth offset', COORDINATE_KEYS],
  beyondShape: ({ member, until }, at) => [
    { place: `${at}.member`, list: 'members', to: member, carried: true },
    ...(until === undefined ? [] : coordinateReferences(until, `${at}.until`)),
  ],
} satisfies Part<OnMember>;
