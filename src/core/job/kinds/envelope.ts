/** Boxes that tubes must keep clear of. */
import * as v from 'valibot';
import type { Degrees } from '../../geometry/angle.ts';
import type { Vec3 } from '../../geometry/vector.ts';
import { MOST_BOXES } from '../limits.ts';
import type { EnvelopeId } from '../reference.ts';
import { length, named, rotation, size, vector } from './fields.ts';
import type { Kind } from './kind.ts';

export interface Envelope {
  readonly id: EnvelopeId;
  readonly name: string;
  readonly kind: 'box';
  readonly centre: Vec3;
  /** Full size along the box's own axes. */
  readonly size: Vec3;
  /** Degrees about the fixed x, then y, then z axes. */
  readonly rotation: readonly [Degrees, Degrees, Degrees];
  /** Required distance from the box to a tube's surface. */
  readonly gap: number;
}

export const envelopeKind: Kind<Envelope> = {
  word: 'envelope',
  letter: 'e',
  shape: v.looseObject({
    ...named,
    kind: v.literal('box'),
    centre: vector,
    size: v.strictTuple([size, size, size]),
    rotation,
    gap: v.optional(length, 0),
  }),
  keys: ['id name kind centre size rotation gap'],
  most: MOST_BOXES,
};
