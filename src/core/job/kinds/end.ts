import type { Vec3 } from '../../geometry/vector.ts';
import type { TubeRef } from '../reference.ts';

export type EndFit = (
  | { readonly fit: 'auto' | 'square' }
  | { readonly fit: 'cope'; readonly against: readonly TubeRef[] }
  | { readonly fit: 'plate'; readonly normal: Vec3 }
) & { readonly allowance: number };
