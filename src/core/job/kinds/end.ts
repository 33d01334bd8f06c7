/** How an end of a member is cut. */
import * as v from 'valibot';
import type { Vec3 } from '../../geometry/vector.ts';
import { MOST_AT_AN_END } from '../limits.ts';
import type { TubeRef } from '../reference.ts';
import { arrowFaults, atMost } from './faults.ts';
import { coordinate, vector } from './fields.ts';
import type { Beyond, Part } from './kind.ts';

export type EndFit = (
  | { readonly fit: 'auto' | 'square' }
  | { readonly fit: 'cope'; readonly against: readonly TubeRef[] }
  | { readonly fit: 'plate'; readonly normal: Vec3 }
) & { readonly allowance: number };

export const AUTO: EndFit = { fit: 'auto', allowance: 0 };

const allowance = v.optional(coordinate, 0);

export const endPart = {
  shape: v.variant('fit', [
    v.looseObject({ fit: v.picklist(['auto', 'square']), allowance }),
    v.looseObject({
      fit: v.literal('cope'),
      against: v.pipe(v.array(v.string()), v.minLength(1, 'names no member')),
      allowance,
    }),
    v.looseObject({ fit: v.literal('plate'), normal: vector, allowance }),
  ]),
  keys: ['fit against allowance', 'fit normal allowance'],
  beyondShape(end, at): Beyond {
    if (end.fit === 'plate') return arrowFaults(end.normal, `${at}.normal`);
    if (end.fit !== 'cope') return [];
    const place = `${at}.against`;
    if (end.against.length > MOST_AT_AN_END) return atMost(MOST_AT_AN_END, end.against, place);
    return end.against.map((to, i) => ({ place: `${place}[${i}]`, list: 'members', to }));
  },
} satisfies Part<EndFit>;
