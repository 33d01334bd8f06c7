/** A measured point of the car. */
import type { Vec3 } from '../../geometry/vector.ts';
import type { PointId } from '../reference.ts';

export interface Point {
  readonly id: PointId;
  readonly name: string;
  readonly position: Vec3;
}
