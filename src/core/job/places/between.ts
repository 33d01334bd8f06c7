/** A node on the straight line through two others: fraction 0 at the first, 1 at the second. */
import * as v from 'valibot';
import { number } from '../kinds/fields.ts';
import type { Part } from '../kinds/kind.ts';
import { GREATEST_FRACTION } from '../limits.ts';
import type { NodeRef } from '../reference.ts';

export interface BetweenPlace {
  readonly kind: 'between';
  readonly nodes: readonly [NodeRef, NodeRef];
  readonly fraction: number;
}

const BEYOND = `beyond ${GREATEST_FRACTION}`;

export const betweenPlace = {
  shape: v.looseObject({
    kind: v.literal('between'),
    nodes: v.strictTuple([v.string(), v.string()]),
    fraction: number(-GREATEST_FRACTION, GREATEST_FRACTION, BEYOND, BEYOND),
  }),
  keys: ['kind nodes fraction'],
  beyondShape: ({ nodes }, at) =>
    nodes.map((to, i) => ({ place: `${at}.nodes[${i}]`, list: 'nodes', to, carried: true })),
} satisfies Part<BetweenPlace>;
