/** The plane that a bent tube lies in, to look at what else is there: where a scan is cut by a hoop's plane. */
import type { Vec3 } from '../geometry/vector.ts';
import type { SolvedTube } from '../solve/types.ts';
import { layFlat, type FlatTube } from './lay-flat.ts';

export interface TubePlane {
  readonly point: Vec3;
  /** Unit vector. */
  readonly normal: Vec3;
  readonly flat: FlatTube;
}

/** Null for a straight tube, and for one that does not lie flat. */
export function planeOfTube(tube: SolvedTube): TubePlane | null {
  const flat = layFlat(tube);
  return flat === null ? null : { point: tube.corners[0]!, normal: flat.toEye, flat };
}
