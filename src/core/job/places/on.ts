/** A node on a member. */
import * as v from 'valibot';
import type { Vec3 } from '../../geometry/vector.ts';
import { bendNumber, coordinate, offset } from '../kinds/fields.ts';
import type { Part } from '../kinds/kind.ts';
import type { TubeRef } from '../reference.ts';

/** A place on another member's real centreline, arcs included: from an end, or from a bend (1 = first from end A). */
export type OnMember = {
  readonly kind: 'on';
  readonly member: TubeRef;
  readonly distance: number;
  /** Moves the node off the axis, car axes, mm. */
  readonly offset: Vec3;
} & (
  | { readonly from: 'start' | 'end'; readonly bend?: never; readonly where?: never }
  | { readonly bend: number; readonly where: 'start' | 'middle' | 'end'; readonly from?: never }
);

export const onPlace = {
  // Distinguished by `from`: beside it no bend is named, without it one is.
  shape: v.variant('from', [
    v.looseObject({
      kind: v.literal('on'),
      member: v.string(),
      from: v.picklist(['start', 'end']),
      bend: v.exactOptional(v.never('not beside "from"')),
      where: v.exactOptional(v.never('not beside "from"')),
      distance: coordinate,
      offset,
    }),
    v.looseObject(
      {
        kind: v.literal('on'),
        member: v.string(),
        bend: bendNumber,
        where: v.picklist(['start', 'middle', 'end']),
        from: v.exactOptional(v.never()),
        distance: v.optional(coordinate, 0),
        offset,
      },
      (issue) => (issue.expected === '"bend"' ? 'missing, and there is no "from" either' : ''),
    ),
  ]),
  keys: ['kind member from bend where distance offset'],
  beyondShape: ({ member }, at) => [{ place: `${at}.member`, list: 'members', to: member, carried: true }],
} satisfies Part<OnMember>;
