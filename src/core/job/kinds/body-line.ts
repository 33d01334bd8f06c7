/** Lines of the body, to see where the cage stands. */
import * as v from 'valibot';
import type { BodyLineId, PointRef } from '../reference.ts';
import { named } from './fields.ts';
import type { Kind } from './kind.ts';
import { leastGap } from './least-gap.ts';

/** A line of the car's body, drawn through measured points so that one sees where the cage stands, and how far from it. Nothing stands on it. */
export interface BodyLine {
  readonly id: BodyLineId;
  readonly name: string;
  readonly points: readonly PointRef[];
  /** As a point's. */
  readonly leastGap?: number;
}

export const bodyLineKind: Kind<BodyLine> = {
  word: 'body line',
  letter: 'l',
  shape: v.looseObject({
    ...named,
    points: v.pipe(v.array(v.string()), v.minLength(2, 'fewer than two points')),
    leastGap,
  }),
  keys: ['id name points leastGap'],
  beyondShape: ({ points }, at) => points.map((to, i) => ({ place: `${at}.points[${i}]`, list: 'points', to })),
};
