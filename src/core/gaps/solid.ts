/**
 * How deep a place lies inside a solid, and a floor under that round about: what the search for the deepest place goes by.
 *
 * `value` is the signed distance to the solid's outside, negative within. A coped tube is what lies within its radius of the centreline and on
 * the kept side of its cuts: its value is the greatest of these distances. Within, that is exact, since what is left out of a solid is
 * whatever lies beyond any of them; outside it is never more than the true distance. Each of them bends down by `bend` (1/mm) at most,
 * so that about a place value + gradient . d - bend d^2 / 2 is a floor (docs/maths/gaps.md).
 */
import type { Path } from '../geometry/path.ts';
import { signedDistanceToBox, type SolidBox } from '../geometry/solid-box.ts';
import { metBy } from '../geometry/met-sleeve.ts';
import { trimAt } from '../geometry/sleeve.ts';
import { addScaled, dot, length, normalize, scale, subtract, type Vec3 } from '../geometry/vector.ts';
import { foot, setFoot, setFootProlonged } from './foot.ts';
import type { Outside, OutsideEnd } from './outside.ts';

/** The signed distance at a place, mm, with its gradient, a unit vector, and how much it may bend down, 1/mm. */
export interface Depth {
  readonly value: number;
  readonly gradient: Vec3;
  readonly bend: number;
}

/** Of any solid; none is deeper than `most` mm. */
export interface Solid {
  readonly depthAt: (p: Vec3) => Depth;
  readonly most: number;
}

/** A box as such a solid: convex, so that it never bends down. */
export const boxSolid = (box: SolidBox): Solid => ({
  depthAt: (p) => {
    const { distance, gradient } = signedDistanceToBox(p, box);
    return { value: distance, gradient, bend: 0 };
  },
  most: Math.min(...box.half),
});

/** A coped tube as such a solid. */
export const tubeSolid = (tube: Outside): Solid => ({ depthAt: (p) => depthInTube(tube, p), most: tube.radius });

function depthInTube(tube: Outside, p: Vec3): Depth {
  let apart = Infinity;
  let at = 0;
  let isArc = false;
  let ring = 0;
  let [x, y, z] = p;
  for (const piece of tube.pieces) {
    setFoot(piece, p);
    if (foot.apart >= apart) continue;
    ({ apart, at, x, y, z } = foot);
    isArc = piece.kind === 'arc';
    ring = piece.kind === 'arc' ? piece.radius : 0;
  }
  const share = apart > 0 ? 1 / apart : 0;
  let deepest: Depth = {
    value: apart - tube.radius,
    gradient: [(p[0] - x) * share, (p[1] - y) * share, (p[2] - z) * share],
    bend: isArc ? bendInside(ring, tube.radius, apart) : 0,
  };
  for (let which = 0; which < 2 && deepest.value <= 0; which++) {
    const end = tube.ends[which]!;
    const s = which === 0 ? at : tube.length - at;
    // Deeper from the end than from the wall, whatever its cut.
    if (s - end.throat > tube.radius) continue;
    const cut = cutAt(end, p);
    if (cut.value > deepest.value) deepest = cut;
  }
  return deepest;
}

/** Inside a bend the way to its axis bends down like a circle about the bend's own; twice that leaves room within a cell. Farther off all is open. */
const bendInside = (ring: number, radius: number, apart: number): number =>
  apart < 1.5 * radius ? 2 / Math.max(ring - radius, radius) : Infinity;

/** The unit vector from a place on an axis to p. */
export const awayFrom = (foot: Vec3, p: Vec3): Vec3 => normalize(subtract(p, foot));

/** How far beyond the cut of an end a place lies, mm; negative on the kept side. */
function cutAt(end: OutsideEnd, p: Vec3): Depth {
  const { axes, origin, tip } = end;
  const { plateNormal, cutter } = end.end;
  const [u] = axes;
  if (plateNormal !== null || cutter.sleeves.length === 0) {
    const into = plateNormal === null ? u : kept(plateNormal, u);
    const plane = addScaled(origin, u, cutter.rise);
    return { value: dot(subtract(plane, p), into), gradient: scale(into, -1), bend: 0 };
  }
  const from = subtract(p, origin);
  const s = dot(from, u);
  let deepest: Depth = { value: tip - s, gradient: scale(u, -1), bend: 0 };
  let isBehind = false;
  for (const { path, radius } of cutter.sleeves) {
    setFootProlonged(path, p);
    const { apart, x, y, z } = foot;
    const [ax, ay, az] = [x - p[0], y - p[1], z - p[2]];
    if (ax * u[0] + ay * u[1] + az * u[2] > 0) isBehind = true;
    if (radius - apart <= deepest.value) continue;
    const share = apart > 0 ? 1 / apart : 0;
    deepest = {
      value: radius - apart,
      gradient: [ax * share, ay * share, az * share],
      bend: bendOf(path, radius, apart),
    };
  }
  // Before a cutter, the line through it leaves that behind; beside or behind one, the line says whether it is kept.
  if (deepest.value >= 0 || s >= end.throat || !isBehind) return deepest;
  const trim = trimOnLine(end, from);
  if (s >= (Number.isNaN(trim) ? tip : trim)) return deepest;
  return { ...deepest, value: end.end.passedBy ? 0 : -deepest.value, bend: Infinity };
}

/** The plate's unit normal on the side of the tube. */
export const kept = (normal: Vec3, u: Vec3): Vec3 => {
  const n = normalize(normal);
  return dot(n, u) < 0 ? scale(n, -1) : n;
};

/** Outside a cylinder the way to it bends down like a circle about its axis; outside a bend, across it, like one about the ring's middle. */
function bendOf({ pieces }: Path, radius: number, apart: number): number {
  if (apart < radius) return Infinity;
  const ring = pieces.reduce(
    (least, piece) => (piece.kind === 'arc' ? Math.min(least, piece.radius) : least),
    Infinity,
  );
  return 1 / Math.min(apart, Math.max(ring - radius, radius));
}

/** mm from the axis: a line as near as this to it has no side. */
const ON_AXIS = 1e-9;

/** The trim on the line along the tube through the place `from` the node, mm along u; NaN where nothing reaches it. */
export function trimOnLine({ end: { cutter }, axes: [u, c] }: OutsideEnd, from: Vec3): number {
  const aside = addScaled(from, u, -dot(from, u));
  const rho = length(aside);
  const reference = rho > ON_AXIS ? scale(aside, 1 / rho) : c;
  let most = NaN;
  for (const met of metBy(cutter.sleeves, { ...cutter.bundle, reference }, rho)) {
    const trim = trimAt(met, 0, NaN);
    if (!(trim <= most)) most = Number.isNaN(trim) ? most : trim;
  }
  return most;
}
