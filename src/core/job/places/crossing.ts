/** A node on a member, where the endless straight line through two other nodes crosses it or passes nearest. */
import * as v from 'valibot';
import type { Part } from '../kinds/kind.ts';
import type { NodeRef, TubeRef } from '../reference.ts';

export interface CrossingPlace {
  readonly kind: 'crossing';
  readonly member: TubeRef;
  readonly line: readonly [NodeRef, NodeRef];
}

export const crossingPlace = {
  shape: v.looseObject({
    kind: v.literal('crossing'),
    member: v.string(),
    line: v.strictTuple([v.string(), v.string()]),
  }),
  keys: ['kind member line'],
  beyondShape: ({ member, line }, at) => [
    { place: `${at}.member`, list: 'members', to: member, carried: true },
    ...line.map((to, i) => ({ place: `${at}.line[${i}]`, list: 'nodes', to, carried: true }) as const),
  ],
} satisfies Part<CrossingPlace>;
