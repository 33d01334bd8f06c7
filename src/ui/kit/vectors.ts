/** The car's axes as tables and cards name them, and the edit of one coordinate. */
import type { Vec3 } from '../../core/geometry/vector.ts';

/** As people say them: Along is forward positive, Offset left, Height up. */
export const CAR_AXES = [
  { header: 'Along', means: '+ forward' },
  { header: 'Offset', means: '+ left' },
  { header: 'Height', means: '+ up' },
] as const;

/** The same vector with one coordinate changed: fields edit one at a time. */
export const withAxis = (vector: Vec3, axis: 0 | 1 | 2, value: number): Vec3 => [
  axis === 0 ? value : vector[0],
  axis === 1 ? value : vector[1],
  axis === 2 ? value : vector[2],
];
