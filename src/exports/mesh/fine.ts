/**
 * Tubes as triangles for other programs: each rim has a vertex on every whole degree of its own profile, so the cuts are as exact
 * as the profiles. Along the tube a circle of 120 sides and bends in steps of 5 degrees take 0.05 % and up to 0.06 % off the
 * steel's volume. Lines that nothing cuts stand down to the tip, as in the mass; a cut that runs into the tube's own bend is
 * drawn to the bend's tangent.
 */
import type { Going } from '../../drawing/going.ts';
import type { Fineness, TubeMesh } from '../../core/mesh/tube.ts';
import { buildTubeMesh } from '../../core/mesh/tube.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { isWhole } from '../shared/whole.ts';

const FINE: Fineness = { lines: 3, bend: 5, rims: 'all' };

/** What is said of a tube that is left out. */
export const NOT_TO_BE_MADE = 'that cannot be made like this';

export interface Meshed {
  readonly tube: SolvedTube;
  /** Millimetres, car axes. */
  readonly mesh: TubeMesh;
}

/** All that can be made, in build order, and the others; `going` hears of each tube before it is laid. */
export async function meshTubes(
  tubes: readonly SolvedTube[],
  going: Going,
): Promise<{ readonly meshed: readonly Meshed[]; readonly leftOut: readonly SolvedTube[] }> {
  const meshed: Meshed[] = [];
  for (const [i, tube] of tubes.entries()) {
    await going(i, tubes.length);
    if (isWhole(tube)) meshed.push({ tube, mesh: buildTubeMesh(tube, FINE) });
  }
  await going(tubes.length, tubes.length);
  return { meshed, leftOut: tubes.filter((tube) => !isWhole(tube)) };
}
