/** How an end of a member is cut. */
import * as v from 'valibot';
import type { Vec3 } from '../../geometry/vector.ts';
import { MOST_AT_AN_END } from '../limits.ts';
import type { FootId, TubeRef } from '../reference.ts';
import { arrowFaults, atMost } from './faults.ts';
import { coordinate, vector } from './fields.ts';
import type { Beyond, Part } from './kind.ts';

export type EndFit = (
  | { readonly fit: 'auto' | 'square' }
  | { readonly fit: 'cope'; readonly against: readonly TubeRef[] }
  | { readonly fit: 'plate'; readonly normal: Vec3 }
  /** Stands on a foot; the normal points from the car towards the tube. */
  | { readonly fit: 'foot'; readonly foot: FootId; readonly normal: Vec3 }
  /** Cut on the plane between the two axes, with a tube of one size that ends at the same node. */
  | { readonly fit: 'mitre'; readonly with: TubeRef }
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
    v.looseObject({ fit: v.literal('foot'), foot: v.string(), normal: vector, allowance }),
    v.looseObject({ fit: v.literal('mitre'), with: v.string(), allowance }),
  ]),
  keys: ['fit against allowance', 'fit foot normal allowance', 'fit with allowance'],
  beyondShape(end, at): Beyond {
    if (end.fit === 'plate') return arrowFaults(end.normal, `${at}.normal`);
    if (end.fit === 'foot') {
      return [{ place: `${at}.foot`, list: 'feet', to: end.foot }, ...arrowFaults(end.normal, `${at}.normal`)];
    }
    if (end.fit === 'mitre') return [{ place: `${at}.with`, list: 'members', to: end.with }];
    if (end.fit !== 'cope') return [];
    const place = `${at}.against`;
    if (end.against.length > MOST_AT_AN_END) return atMost(MOST_AT_AN_END, end.against, place);
    return end.against.map((to, i) => ({ place: `${place}[${i}]`, list: 'members', to }));
  },
} satisfies Part<EndFit>;
