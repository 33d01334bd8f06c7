import type { Vec3 } from '../../geometry/vector.ts';
import type { PointRef } from '../reference.ts';

export interface PointPlace {
  readonly kind: 'point';
  readonly point: PointRef;
  readonly offset: Vec3;
}
