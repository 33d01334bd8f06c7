/**
 * Whether a tube can be shown as a body: bends that overlap or run past an end have no centreline that could be swept, and
 * cuts that meet leave no tube. The checks say so too; models leave such a tube out and name it.
 */
import { ROUNDING } from '../../core/geometry/tolerance.ts';
import type { SolvedTube, TubeEnd } from '../../core/solve/types.ts';

export function isWhole(tube: SolvedTube): boolean {
  if (tube.straights.some((straight) => straight < -ROUNDING)) return false;
  const [a, b] = tube.ends;
  if (tube.bends.length > 0) return (a.throat ?? 0) + (b.throat ?? 0) < tube.path.length;
  // A straight tube counts its lines from one reference at both ends, the one way about and the other.
  const met = (face: 'outer' | 'inner', k: number): boolean =>
    trimOf(a, face, k) + trimOf(b, face, (360 - k) % 360) >= tube.path.length;
  return !a.outer.some((_, k) => met('outer', k) || met('inner', k));
}

/** Where nothing reaches, the wall stands down to the tip. */
function trimOf(end: TubeEnd, face: 'outer' | 'inner', k: number): number {
  const trim = end[face][k]!;
  return Number.isNaN(trim) ? (end.tip ?? 0) : trim;
}
