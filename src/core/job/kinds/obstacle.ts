import type { Degrees } from '../../geometry/angle.ts';
import type { Vec3 } from '../../geometry/vector.ts';

/** What stands round the machine, in bender axes. A plane stands for a wall, a bench's top or a ceiling without end: its normal points into the room. */
export type Obstacle = { readonly name: string } & (
  | {
      readonly kind: 'box';
      readonly centre: Vec3;
      readonly size: Vec3;
      readonly rotation: readonly [Degrees, Degrees, Degrees];
    }
  | { readonly kind: 'plane'; readonly point: Vec3; readonly normal: Vec3 }
);
