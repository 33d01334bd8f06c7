/**
 * The face of a cut, seen from a place before it on the side that is cut away: of a plate, a square end and the strips that no cutter
 * reaches a plane, of a cope the hollow of what it is coped to.
 */
import { distanceTo, foot, setFootOf } from '../geometry/foot.ts';
import type { ArcPiece } from '../geometry/path.ts';
import type { Sleeve } from '../geometry/met-sleeve.ts';
import { add, addScaled, cross, dot, length, rotateAbout, scale, subtract, type Vec3 } from '../geometry/vector.ts';
import type { Probe } from './least-on-chain.ts';
import { hollowsOf, type Hollow } from './hollows.ts';
import type { OutsideEnd } from './outside.ts';
import { awayFrom, kept, trimOnLine } from './solid.ts';

/** A flat cut's plane: a place on it, and its unit normal into the tube. */
export interface FlatCut {
  readonly place: Vec3;
  readonly into: Vec3;
}

/** Of a plate, a square end, or where no line is reached; null for a cope. */
export function flatCut({ end, axes: [u], origin, tip }: OutsideEnd): FlatCut | null {
  if (end.plateNormal !== null && end.tip !== null)
    return { place: addScaled(origin, u, end.cutter.rise), into: kept(end.plateNormal, u) };
  return end.tip === null || end.cutter.sleeves.length === 0 ? { place: addScaled(origin, u, tip), into: u } : null;
}

/** A ball that holds an end's whole cut. */
export interface BallOfCut {
  readonly centre: Vec3;
  readonly radius: number;
}

/** The ball round an end's cut: its middle on the axis between tip and throat. */
export function ballOfCut({ origin, axes: [u], tip, throat, radius }: OutsideEnd): BallOfCut {
  return { centre: addScaled(origin, u, (tip + throat) / 2), radius: Math.hypot((throat - tip) / 2, radius) };
}

/**
 * How far places within a ball stand before the end's face, square to it, mm; no value where the face is not straight behind it. Null where
 * none of them does. What stands on the `cutters` of its own end is outside those.
 */
export function faceProbe(end: OutsideEnd, ball: BallOfCut, cutters: readonly Sleeve[]): Probe | null {
  const { centre, radius } = ballOfCut(end);
  const flat = flatCut(end);
  const strips =
    flat === null && end.end.passedBy
      ? { place: addScaled(end.origin, end.axes[0], end.tip), into: end.axes[0] }
      : null;
  const hollows = (flat === null ? hollowsOf(end) : []).filter(
    ({ sleeve, pieces }) =>
      cutters.every((own) => own.path !== sleeve.path) && distanceTo(pieces, ball.centre) < sleeve.radius + ball.radius,
  );
  if (flat === null && strips === null && hollows.length === 0) return null;
  return {
    value: (p) => {
      let least = flat === null ? NaN : beforePlane(end, flat, p);
      const strip = strips === null ? NaN : beforePlane(end, strips, p);
      if (!Number.isNaN(strip) && Number.isNaN(trimOnLine(end, subtract(p, end.origin)))) least = strip;
      for (const hollow of hollows) {
        const off = beforeHollow(end, hollow, p);
        if (!Number.isNaN(off) && !(off >= least)) least = off;
      }
      return least;
    },
    floor: (p) => length(subtract(p, centre)) - radius,
  };
}

const withinBar = ({ origin, axes: [u], radius }: OutsideEnd, p: Vec3): boolean =>
  length(cross(subtract(p, origin), u)) <= radius;

function beforePlane(end: OutsideEnd, { place, into }: FlatCut, p: Vec3): number {
  const off = dot(subtract(place, p), into);
  return off >= 0 && withinBar(end, addScaled(p, into, off)) ? off : NaN;
}

/** mm: as near as this to the trim of its line a place is on the face. */
const ON_FACE = 1e-6;

/** For a place within the room of what the end is coped to. */
function beforeHollow(end: OutsideEnd, { sleeve: { radius }, pieces }: Hollow, p: Vec3): number {
  setFootOf(pieces, p);
  const { apart, x, y, z } = foot;
  const off = radius - apart;
  if (off < 0) return NaN;
  const middle: Vec3 = [x, y, z];
  const q = addScaled(middle, awayFrom(middle, p), radius);
  const from = subtract(q, end.origin);
  return withinBar(end, q) && Math.abs(dot(from, end.axes[0]) - trimOnLine(end, from)) <= ON_FACE ? off : NaN;
}

/** Of a place `off` mm before the face, as faceProbe has it: the place of the face straight behind it. */
export function placeOnFace(end: OutsideEnd, p: Vec3, off: number): Vec3 {
  for (const { pieces, sleeve } of flatCut(end) === null ? hollowsOf(end) : []) {
    setFootOf(pieces, p);
    const middle: Vec3 = [foot.x, foot.y, foot.z];
    if (Math.abs(sleeve.radius - foot.apart - off) < ON_FACE)
      return addScaled(middle, awayFrom(middle, p), sleeve.radius);
  }
  return addScaled(p, flatCut(end)?.into ?? end.axes[0], off);
}

/** The places at which the wall round an arc comes nearest to a plane or goes farthest through it: the nearer one, if straight behind it lies the face. */
export function bulgeBefore(
  end: OutsideEnd,
  arc: ArcPiece,
  radius: number,
): { off: number; at: Vec3; onFace: Vec3 } | null {
  const flat = flatCut(end);
  if (flat === null) return null;
  const spoke = subtract(arc.from, arc.centre);
  // Where the arc runs along the plane.
  const turned = Math.atan2(dot(arc.startTangent, flat.into), dot(spoke, flat.into) / arc.radius);
  for (const turn of [turned, turned + Math.PI, turned - Math.PI]) {
    if (turn < 0 || turn > arc.angle) continue;
    const at = addScaled(add(arc.centre, rotateAbout(spoke, arc.normal, turn)), flat.into, radius);
    const off = beforePlane(end, flat, at);
    if (!Number.isNaN(off)) return { off, at, onFace: addScaled(at, flat.into, off) };
  }
  return null;
}

/** Two unit vectors along a plane, square to one another. */
export function sidesOf({ into }: FlatCut, along: Vec3): readonly [Vec3, Vec3] {
  const side = cross(into, along);
  const first = scale(side, 1 / length(side));
  return [first, cross(into, first)];
}
