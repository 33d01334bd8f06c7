/**
 * Trim read off a mesh: a cylinder for the branch is cut by the run's solid with the mesh booleans of manifold-3d, and
 * rays are sent through what is left, along the generator lines.
 *
 * The run is a polygon of `SEGMENTS` sides whose corners lie on the true surface (and, in a bend, rings `BEND_STEP`
 * apart): its flats stand at most `chordalError` away from the true surface, inside it, or outside it at the inner side
 * of a bend. The branch's corners lie on the generator lines themselves, so the branch adds no error. All of it is laid
 * out in the branch's own frame: long triangles along an axis have slim boxes, and the booleans are ten times faster.
 */
import initialise, { type Manifold, type ManifoldToplevel } from 'manifold-3d';
import { type Bow, type Cutter, type Straight } from './centreline.ts';
import { generatorStart, type End } from './march.ts';
import { along, anySquare, difference, inner, outer, type Triple } from './space.ts';

export const SEGMENTS = 360;
/** Degrees of bend between two rings. */
export const BEND_STEP = 2;
/** How far the prolonged straights are modelled: crossings beyond it are not seen. */
export const MODELLED = 1000;
/** Rays run this much under the surface, where they meet only the cut; times the steepest line it is still nothing. */
const UNDER = 1e-7;
/** Parts of a run overlap by this, so that no two faces lie in one plane; over it a bend strays less than 1e-6 mm. */
const OVERLAP = 0.01;

/** Farthest that a flat of the run's mesh stands from the true surface. */
export function chordalError(cutter: Cutter): number {
  const across = cutter.radius * (1 - Math.cos(Math.PI / SEGMENTS));
  const reaches = cutter.parts.map((part) => (part.kind === 'bow' ? part.radius + cutter.radius : 0));
  return across + Math.max(...reaches) * (1 - Math.cos((BEND_STEP * Math.PI) / 360));
}

export async function startMesh(): Promise<ManifoldToplevel> {
  const module = await initialise();
  module.setup();
  return module;
}

/** Leaving crossings nearest to the node, of all cutters the largest, at each of `degrees`; null where none reaches. */
export function trimsByMesh(module: ManifoldToplevel, end: End, degrees: readonly number[]): (number | null)[] {
  const trims: (number | null)[] = degrees.map(() => null);
  const branch = place(cylinder(module, end.radius, 2 * MODELLED), [0, 0, -MODELLED], [0, 0, 1], [1, 0, 0]);
  const bare: End = {
    node: [0, 0, 0],
    direction: [0, 0, 1],
    reference: [1, 0, 0],
    radius: end.radius - UNDER,
    cutters: [],
  };
  for (const cutter of end.cutters) {
    const parts = solidsOf(module, seenFrom(end, cutter));
    const rest = without(branch, parts);
    degrees.forEach((phi, i) => {
      const nearest = nearestLeaving(rest, bare, phi);
      const before = trims[i]!;
      if (nearest !== null && (before === null || nearest > before)) trims[i] = nearest;
    });
    for (const solid of [rest, ...parts]) solid.delete();
  }
  branch.delete();
  return trims;
}

/**
 * The branch less all parts. They are taken off one after the other, each at once (`status` waits for it): left to itself the library
 * first puts the parts together, far from the branch too, and of bends that is most of the work.
 */
function without(branch: Manifold, parts: readonly Manifold[]): Manifold {
  return parts.reduce((left, part) => {
    const rest = left.subtract(part);
    rest.status();
    if (left !== branch) left.delete();
    return rest;
  }, branch);
}

/** The cutter in the branch's frame: z along it from the node, x to phi = 0. */
function seenFrom(end: End, cutter: Cutter): Cutter {
  const axes = [end.reference, outer(end.direction, end.reference), end.direction] as const;
  const turn = (v: Triple): Triple => [inner(v, axes[0]), inner(v, axes[1]), inner(v, axes[2])];
  const shift = (p: Triple): Triple => turn(difference(p, end.node));
  const parts = cutter.parts.map((part) =>
    part.kind === 'bow'
      ? { ...part, centre: shift(part.centre), toStart: turn(part.toStart), travel: turn(part.travel) }
      : { ...part, from: shift(part.from), direction: turn(part.direction) },
  );
  return { ...cutter, parts };
}

/** Where the ray comes out of the run it enters what is left of the branch: there the mesh faces backwards. */
function nearestLeaving(rest: Manifold, end: End, phi: number): number | null {
  const start = generatorStart(end, phi);
  const from = 1 - MODELLED;
  const hits = rest.rayCast([...along(start, end.direction, from)], [...along(start, end.direction, -from)]);
  const leaving = hits
    .filter((hit) => inner(hit.normal, end.direction) < 0)
    .map((hit) => from - 2 * from * hit.distance);
  return leaving.length === 0 ? null : leaving.reduce((a, b) => (Math.abs(b) < Math.abs(a) ? b : a));
}

/** Closed solids that together are the run; they overlap a little at the tangents. `bendStep`: degrees between rings. */
export function solidsOf(module: ManifoldToplevel, cutter: Cutter, bendStep = BEND_STEP): Manifold[] {
  return cutter.parts.map((part, i) => {
    if (part.kind === 'bow') return bowSolid(module, part, cutter.radius, bendStep);
    const last = i === cutter.parts.length - 1;
    const behind = part.openBehind ? MODELLED : i > 0 ? OVERLAP : 0;
    const ahead = last ? MODELLED : part.length + OVERLAP;
    return straightSolid(module, part, cutter.radius, behind, ahead);
  });
}

function straightSolid(
  module: ManifoldToplevel,
  part: Straight,
  radius: number,
  behind: number,
  ahead: number,
): Manifold {
  const solid = cylinder(module, radius, behind + ahead);
  return place(solid, along(part.from, part.direction, -behind), part.direction, anySquare(part.direction));
}

/** A revolved circle stands about z and begins in the xz plane: z is laid on the bend's axis, x on its start. */
function bowSolid(module: ManifoldToplevel, bow: Bow, radius: number, bendStep: number): Manifold {
  const circle = module.CrossSection.circle(radius, SEGMENTS).translate([bow.radius, 0]);
  const turns = Math.round(360 / bendStep);
  const degrees = (bow.angle * 180) / Math.PI;
  const solid = module.Manifold.revolve(circle, turns, degrees);
  circle.delete();
  return place(solid, bow.centre, outer(bow.toStart, bow.travel), bow.toStart);
}

export const cylinder = (module: ManifoldToplevel, radius: number, length: number): Manifold =>
  module.Manifold.cylinder(length, radius, radius, SEGMENTS);

/** Lays z on `axis` and x on `zero`, and the origin on `origin`. */
function place(solid: Manifold, origin: Triple, axis: Triple, zero: Triple): Manifold {
  const side = outer(axis, zero);
  const placed = solid.transform([...zero, 0, ...side, 0, ...axis, 0, ...origin, 1]);
  solid.delete();
  return placed;
}
