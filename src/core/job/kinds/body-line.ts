/** Lines of the body, to see where the cage stands. */
import * as v from 'valibot';
import type { BodyLineId, PointRef } from '../reference.ts';
import { named } from './fields.ts';
import type { Kind } from './kind.ts';

/** A line of the car's body, drawn through measured points so that one sees where the cage stands. Not derived from. */
export interface BodyLine {
  readonly id: BodyLineId;
  readonly name: string;
  readonly points: readonly PointRef[];
}

export const bodyLineKind: Kind<BodyLine> = {
  word: 'body line',
  letter: 'l',
  shape: v.looseObject({
    ...named,
    points: v.pipe(v.array(v.string()), v.minLength(2, 'fewer than two points')),
  }),
  keys: ['id name points'],
  beyondShape: ({ points }, at) => points.map((to, i) => ({ place: `${at}.points[${i}]`, list: 'points', to })),
};
