import type { Vec3 } from '../../geometry/vector.ts';

export interface FixedPlace {
  readonly kind: 'fixed';
  readonly position: Vec3;
}
