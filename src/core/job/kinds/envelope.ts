import type { Degrees } from '../../geometry/angle.ts';
import type { Vec3 } from '../../geometry/vector.ts';
import type { EnvelopeId } from '../reference.ts';

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
