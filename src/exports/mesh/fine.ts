/**
 * Tubes as triangles for other programs: each rim has a vertex on every whole degree of its own profile, so the cuts are as exact
 * as the profiles. Along the tube a circle of 120 sides and bends in steps of 5 degrees take 0.05 % and up to 0.06 % off the
 * steel's volume. Lines that nothing cuts stand down to the tip, as in the mass; a cut that runs into the tube's own bend is
 * drawn to the bend's tangent. Feet are without their holes, a bent plate in flats of 5 degrees; a folded gusset is three shells, two faces and the fold.
 */
import type { Going } from '../../drawing/going.ts';
import type { Fineness, TubeMesh } from '../../core/mesh/tube.ts';
import { buildTubeMesh } from '../../core/mesh/tube.ts';
import { footMeshes } from '../../core/feet/mesh.ts';
import { standsOf } from '../../core/feet/stand.ts';
import { gussetsOf, isMade } from '../../core/gusset/gussets.ts';
import { gussetMesh } from '../../core/gusset/mesh.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { footName, gussetName } from '../shared/stand-name.ts';
import type { Derived } from '../../core/derive.ts';
import { leftOutNote } from '../shared/files.ts';
import { isWhole } from '../shared/whole.ts';

const FINE: Fineness = { lines: 3, bend: 5, rims: 'all' };

/** What must be heard of the file: tubes that are left out, and holes. Nothing where it holds all there is. */
export function meshNote(
  fileName: string,
  { tubes }: Derived,
  leftOut: readonly SolvedTube[],
): { readonly note?: string } {
  const { note } = leftOutNote(
    fileName,
    'that cannot be made like this',
    leftOut.map(({ number, name }) => `${number} ${name}`),
  );
  const isDrilled = tubes.flatMap(standsOf).some(({ foot }) => foot.holes !== undefined && foot.holes.length > 0);
  const notes = [note, isDrilled ? `The feet in ${fileName} are without their holes.` : undefined].filter(
    (each) => each !== undefined,
  );
  return notes.length === 0 ? {} : { note: notes.join(' ') };
}

export interface Meshed {
  /** "12 Rear stay (left)", "12 B Tower box". */
  readonly name: string;
  /** Closed shells; millimetres, car axes. */
  readonly shells: readonly Pick<TubeMesh, 'positions' | 'normals' | 'indices'>[];
}

/** All that can be made: in build order, each with the feet under it, then the gussets; and the tubes that cannot; `going` hears of each tube before it is laid. */
export async function meshTubes(
  derived: Derived,
  going: Going,
): Promise<{ readonly meshed: readonly Meshed[]; readonly leftOut: readonly SolvedTube[] }> {
  const { tubes } = derived;
  const meshed: Meshed[] = [];
  for (const [i, tube] of tubes.entries()) {
    await going(i, tubes.length);
    if (!isWhole(tube)) continue;
    meshed.push({ name: `${tube.number} ${tube.name}`, shells: [buildTubeMesh(tube, FINE)] });
    for (const stand of standsOf(tube)) meshed.push({ name: footName(stand), shells: footMeshes(stand) });
  }
  for (const set of gussetsOf(derived)) {
    if (!isMade(set.made)) continue;
    meshed.push({ name: gussetName(set), shells: gussetMesh(set.made, set.gusset.thickness).shells });
  }
  await going(tubes.length, tubes.length);
  return { meshed, leftOut: tubes.filter((tube) => !isWhole(tube)) };
}
