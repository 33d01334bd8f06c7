/** A straight coped tube as a closed mesh: the wall in 360 strips, each cut a fan of rings in to its axis. */
import type { Manifold, ManifoldToplevel } from 'manifold-3d';
import type { CopedEnd, CopedSolid } from './coped.ts';
import { trimByMarch } from './march.ts';
import { along, around, inner, outer, square, type Triple } from './space.ts';

export { startMesh } from './mesh.ts';

const LINES = 360;
/** Radii of the rings of a cut's face, as shares of the tube's. */
const RINGS = [1, 0.75, 0.5, 0.25];

/** mm along from the node at which the solid begins, on the line so far from the axis. */
function trimInside(end: CopedEnd, share: number, phi: number): number {
  if (share === 1) return end.profile[phi] ?? end.tip;
  if (end.cutters.length > 0) return trimByMarch({ ...end, radius: share * end.radius }, phi) ?? end.tip;
  const flat = around(end.direction, end.reference, phi);
  return end.plane === null
    ? end.tip
    : (-share * end.radius * inner(flat, end.plane)) / inner(end.direction, end.plane);
}

export function meshOfStraight(module: ManifoldToplevel, { coped, length }: CopedSolid): Manifold {
  const [a, b] = coped.ends;
  const positions: number[] = [];
  const triangles: number[] = [];
  const lay = (p: Triple): number => positions.push(...p) / 3 - 1;
  /** End B's angles run the other way about, from a reference of its own. */
  const ring = (end: CopedEnd, share: number): number[] => {
    const u = a.direction;
    return Array.from({ length: LINES }, (_, k) => {
      const towards = around(u, a.reference, k);
      const own =
        (Math.atan2(inner(towards, outer(end.direction, end.reference)), inner(towards, end.reference)) * 180) /
        Math.PI;
      const phi = ((Math.round(own) % 360) + 360) % 360;
      const way = square(around(end.direction, end.reference, phi), end.direction);
      return lay(along(along(end.node, end.direction, trimInside(end, share, phi)), way, share * coped.radius));
    });
  };
  const strip = (from: readonly number[], to: readonly number[]): void => {
    for (let k = 0; k < LINES; k++) {
      const next = (k + 1) % LINES;
      triangles.push(from[k]!, from[next]!, to[k]!, from[next]!, to[next]!, to[k]!);
    }
  };
  const [ringsA, ringsB] = [a, b].map((end) => RINGS.map((share) => ring(end, share)));
  strip(ringsA![0]!, ringsB![0]!);
  for (const [rings, end, isA] of [
    [ringsA!, a, true],
    [ringsB!, b, false],
  ] as const) {
    for (let i = 1; i < rings.length; i++)
      if (isA) strip(rings[i]!, rings[i - 1]!);
      else strip(rings[i - 1]!, rings[i]!);
    const middle = lay(along(end.node, end.direction, trimInside(end, 1e-6, 0)));
    const inmost = rings.at(-1)!;
    for (let k = 0; k < LINES; k++) {
      const next = (k + 1) % LINES;
      if (isA) triangles.push(middle, inmost[next]!, inmost[k]!);
      else triangles.push(middle, inmost[k]!, inmost[next]!);
    }
  }
  void length;
  const made = new module.Manifold(
    new module.Mesh({
      numProp: 3,
      vertProperties: Float32Array.from(positions),
      triVerts: Uint32Array.from(triangles),
    }),
  );
  return made.volume() < 0 ? made.mirror([0, 0, 0]) : made;
}
