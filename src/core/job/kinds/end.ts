import * as v from 'valibot';
import type { Vec3 } from '../../geometry/vector.ts';
import { MOST_AT_AN_END } from '../limits.ts';
import type { TubeRef } from '../reference.ts';
import { arrowFaults, atMost } from './faults.ts';
import { coordinate, vector } from './fields.ts';
import type { Part } from './kind.ts';

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
  *beyondShape(end) {
    if (end.fit === 'plate') yield* arrowFaults(end.normal, 'normal');
    if (end.fit !== 'cope') return;
    const tooMany = atMost(MOST_AT_AN_END, end.against, 'against');
    if (tooMany.length > 0) yield* tooMany;
    else for (const [i, to] of end.against.entries()) yield { place: `against[${i}]`, list: 'members', to };
  },
} satisfies Part<EndFit>;
