/**
 * How deep a place lies inside a solid, and a floor under that round about: what the search for the deepest place goes by.
 *
 * `value` is the signed distance to the solid's outside, negative within. A coped tube is what lies within its radius of the centreline and on
 * the kept side of its cuts: its value is the greatest of these distances. Within, that is exact, since what is left out of a solid is
 * whatever lies beyond any of them; outside it is never more than the true distance. Each of them bends down by `bend` (1/mm) at most,
 * so that about a place value + gradient . d - bend d^2 / 2 is a floor (docs/maths/gaps.md).
 */
import { foot, setFoot, setFootOf } from '../geometry/foot.ts';
import { signedDistanceToBox, type SolidBox } from '../geometry/solid-box.ts';
import { metBy } from '../geometry/met-sleeve.ts';
import { trimAt } from '../geometry/sleeve.ts';
import { addScaled, dot, length, normalize, scale, subtract, type Vec3 } from '../geometry/vector.ts';
import { hollowsOf } from './hollows.ts';
import type { Outside, OutsideEnd } from './outside.ts';

/** The last answer: scratch, as a search asks some thousand times. */
export const depth = {
  /** The signed distance at the place, mm. */
  value: 0,
  /** Its gradient there, a unit vector. */
  x: 0,
  y: 0,
  z: 0,
  /** How much it may bend down, 1/mm. */
  bend: 0,
};

function setTo(value: number, x: number, y: number, z: number, bend: number): void {
  depth.value = value;
  depth.x = x;
  depth.y = y;
  depth.z = z;
  depth.bend = bend;
}

/** Of any solid; none is deeper than `most` mm. */
export interface Solid {
  /** Sets `depth` for the place p. */
  readonly setDepth: (p: Vec3) => void;
  readonly most: number;
}

/** The signed distance of p to the solid's outside, mm; negative within. */
export function depthIn({ setDepth }: Solid, p: Vec3): number {
  setDepth(p);
  return depth.value;
}

/** From a place so deep in a solid, straight to its outside. */
export function wayOutOf({ setDepth }: Solid, at: Vec3, value: number): Vec3 {
  setDepth(at);
  return [at[0] - value * depth.x, at[1] - value * depth.y, at[2] - value * depth.z];
}

/** A box as such a solid: convex, so that it never bends down. */
export const boxSolid = (box: SolidBox): Solid => ({
  setDepth: (p) => {
    const { distance, gradient } = signedDistanceToBox(p, box);
    setTo(distance, gradient[0], gradient[1], gradient[2], 0);
  },
  most: Math.min(...box.half),
});

/** A coped tube as such a solid. */
export const tubeSolid = (tube: Outside): Solid => ({ setDepth: (p) => setDepthInTube(tube, p), most: tube.radius });

function setDepthInTube(tube: Outside, p: Vec3): void {
  let apart = Infinity;
  let at = 0;
  let ring = 0;
  let x = 0;
  let y = 0;
  let z = 0;
  for (const piece of tube.pieces) {
    setFoot(piece, p);
    if (foot.apart >= apart) continue;
    ({ apart, at, x, y, z } = foot);
    ring = piece.kind === 'arc' ? piece.radius : 0;
  }
  const share = apart > 0 ? 1 / apart : 0;
  const bend = ring > 0 ? bendInside(ring, tube.radius, apart) : 0;
  setTo(apart - tube.radius, (p[0] - x) * share, (p[1] - y) * share, (p[2] - z) * share, bend);
  for (let which = 0; which < 2 && depth.value <= 0; which++) {
    const end = tube.ends[which]!;
    const s = which === 0 ? at : tube.length - at;
    // Deeper from the end than from the wall, whatever its cut.
    if (s - end.throat <= tube.radius) raiseToCut(end, p);
  }
}

/** Inside a bend the way to its axis bends down like a circle about the bend's own; twice that leaves room within a cell. Farther off all is open. */
const bendInside = (ring: number, radius: number, apart: number): number =>
  apart < 1.5 * radius ? 2 / Math.max(ring - radius, radius) : Infinity;

/** The unit vector from a place on an axis to p. */
export const awayFrom = (foot: Vec3, p: Vec3): Vec3 => normalize(subtract(p, foot));

/** Sets `depth` to how far beyond the cut of an end a place lies, mm (negative on the kept side), where that is more than what it holds. */
function raiseToCut(end: OutsideEnd, p: Vec3): void {
  const { axes, origin, tip } = end;
  const { plateNormal, cutter } = end.end;
  const [u] = axes;
  const fromX = p[0] - origin[0];
  const fromY = p[1] - origin[1];
  const fromZ = p[2] - origin[2];
  if (plateNormal !== null || cutter.sleeves.length === 0) {
    const [x, y, z] = plateNormal === null ? u : kept(plateNormal, u);
    const off = cutter.rise * (u[0] * x + u[1] * y + u[2] * z) - (fromX * x + fromY * y + fromZ * z);
    if (off > depth.value) setTo(off, -x, -y, -z, 0);
    return;
  }
  const s = fromX * u[0] + fromY * u[1] + fromZ * u[2];
  let value = tip - s;
  let [x, y, z] = [-u[0], -u[1], -u[2]];
  let bend = 0;
  let isBehind = false;
  for (const { sleeve, pieces, ring } of hollowsOf(end)) {
    setFootOf(pieces, p);
    const { radius } = sleeve;
    const { apart } = foot;
    const ax = foot.x - p[0];
    const ay = foot.y - p[1];
    const az = foot.z - p[2];
    if (ax * u[0] + ay * u[1] + az * u[2] > 0) isBehind = true;
    if (radius - apart <= value) continue;
    const share = apart > 0 ? 1 / apart : 0;
    value = radius - apart;
    x = ax * share;
    y = ay * share;
    z = az * share;
    bend = bendOf(ring, radius, apart);
  }
  // Before a cutter, the line through it leaves that behind; beside or behind one, the line says whether it is kept.
  if (value < 0 && s < end.throat && isBehind) {
    const trim = trimOnLine(end, [fromX, fromY, fromZ]);
    if (s < (Number.isNaN(trim) ? tip : trim)) {
      value = end.end.passedBy ? 0 : -value;
      bend = Infinity;
    }
  }
  if (value > depth.value) setTo(value, x, y, z, bend);
}

/** The plate's unit normal on the side of the tube. */
export const kept = (normal: Vec3, u: Vec3): Vec3 => {
  const n = normalize(normal);
  return dot(n, u) < 0 ? scale(n, -1) : n;
};

/** Outside a cylinder the way to it bends down like a circle about its axis; outside a bend, across it, like one about the ring's middle. */
const bendOf = (ring: number, radius: number, apart: number): number =>
  apart < radius ? Infinity : 1 / Math.min(apart, Math.max(ring - radius, radius));

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
