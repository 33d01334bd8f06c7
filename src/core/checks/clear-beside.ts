/**
 * Whether a few distances show that a straight tube is clear of a run tube past its cope: the quick answer for nearly every end.
 *
 * Past a straight run tube, which is convex, no line comes back to it. Past a bend a line comes back only if its distance from the
 * bend's axis has a greatest value between, at a distance e from b on. There, with R the ring's radius and t the angle between
 * line and axis, tan^2 t <= e / (R - e): on the inner side the axis curves towards the line by no more. So where that angle stays larger
 * over all of the axis that can be nearest, it does not come back.
 */
import type { Sleeve } from '../geometry/met-sleeve.ts';
import { nearestOnPath, type Piece } from '../geometry/path.ts';
import { ANGLE_ROUNDING } from '../geometry/tolerance.ts';
import { addScaled, cross, distance, dot, interpolate, length, subtract } from '../geometry/vector.ts';
import type { Cut, TubeEnd } from '../solve/types.ts';

/** mm. Steps along an axis that is too near to tell. */
const STEP = 5;
/** Steps along an axis in all, before it is gone through line by line. */
const MOST_STEPS = 300;

/**
 * True where the wall between an end's cut and `long` mm from its node, or the cut of the `other` end, is surely clear of the sleeve. A
 * `cut` is the one that the sleeve makes at that end; null where it does not cut there. False where it may not be.
 */
export function isClearBeside(
  sleeve: Sleeve,
  end: TubeEnd,
  cut: Cut | null,
  other: TubeEnd | null,
  otherCut: Cut | null,
  long: number,
): boolean {
  const { pieces } = sleeve.path;
  const isAlong = [cut, otherCut].some((each) => each !== null && Math.sin(each.includedAngle) < ANGLE_ROUNDING);
  if (pieces.length === 1 && !isAlong && (cut !== null || otherCut !== null)) return true;
  const radius = end.cutter.section.outerDiameter / 2;
  const room = radius + sleeve.radius;
  const over = (s: number): number =>
    nearestOnPath(sleeve.path, addScaled(end.position, end.direction, s), true).distance - room;

  // How far from either node the joint goes: from there on the axis is clear, until the other's.
  let steps = 0;
  const jointOf = (of: TubeEnd | null, by: Cut | null, far: (s: number) => number): number => {
    if (of === null) return 0;
    if (by === null) return of.tip ?? 0;
    let s = of.throat ?? 0;
    while (s < long && far(s) <= 0 && steps++ < MOST_STEPS) s += STEP;
    return s;
  };
  const from = jointOf(end, cut, over);
  const behind = jointOf(other, otherCut, (s) => over(long - s));
  for (let s = from; s <= long - behind;) {
    const gap = over(s);
    if (gap <= 0 || steps++ >= MOST_STEPS) return false;
    s += gap;
  }
  if (steps >= MOST_STEPS) return false;
  return (
    (cut === null || neverComesBack(sleeve, end, cut, from, radius)) &&
    (other === null || otherCut === null || neverComesBack(sleeve, other, otherCut, behind, radius))
  );
}

/** Whether no line of the joint, which reaches `far` mm from the node, comes back to the run tube within it. */
function neverComesBack(sleeve: Sleeve, end: TubeEnd, cut: Cut, far: number, radius: number): boolean {
  const { pieces } = sleeve.path;
  if (end.tip === null) return false;
  const [first, last] = [end.tip, far].map((s) => addScaled(end.position, end.direction, s));
  const off = Math.max(distance(first!, cut.landing), distance(last!, cut.landing));
  // All of the joint lies within this of the place of the axis nearest the node.
  const about = off + radius;
  const near = pieces.flatMap((piece, i) =>
    distanceOf(piece, i, pieces.length, cut) <= about + sleeve.radius ? [i] : [],
  );
  const [lowest, highest] = [near[0], near.at(-1)];
  if (lowest === undefined || highest! - lowest !== near.length - 1) return false;
  const arcs = near.map((i) => pieces[i]!).filter((piece) => piece.kind === 'arc');
  if (arcs.length === 0) return near.length === 1;
  const ring = Math.min(...arcs.map((arc) => arc.radius));
  if (about >= ring) return false;
  // From place to place of the joint what is nearest on the axis moves by R / (R - e) as much at most.
  const moved = (about * ring) / (ring - about);
  const steepest = near.reduce((most, i) => Math.max(most, alongTangents(pieces[i]!, end, cut.landingAt, moved)), 0);
  return Math.acos(Math.min(1, steepest)) > Math.atan(Math.sqrt(about / (ring - about)));
}

/** The greatest |u . t| of the end's direction and the tangents of a piece, no farther along it than `within` from the landing. */
function alongTangents(piece: Piece, { direction }: TubeEnd, landingAt: number, within: number): number {
  const straight = dot(direction, piece.startTangent);
  if (piece.kind === 'line') return Math.abs(straight);
  const turnOf = (at: number): number => Math.min(Math.max(at - piece.at, 0), piece.length) / piece.radius;
  const [from, to] = [turnOf(landingAt - within), turnOf(landingAt + within)];
  const inwards = dot(direction, cross(piece.normal, piece.startTangent));
  const at = (turn: number): number => Math.abs(straight * Math.cos(turn) + inwards * Math.sin(turn));
  const most = Math.atan2(inwards, straight);
  const isBetween = [most - Math.PI, most, most + Math.PI].some((turn) => turn > from && turn < to);
  return Math.max(at(from), at(to), isBetween ? Math.hypot(straight, inwards) : 0);
}

/** At least how far the landing is from a piece of the axis; an end straight is prolonged. */
function distanceOf(piece: Piece, i: number, count: number, { landing }: Cut): number {
  if (piece.kind === 'line') {
    const along = dot(subtract(landing, piece.from), piece.startTangent);
    const held = Math.min(Math.max(along, i === 0 ? -Infinity : 0), i === count - 1 ? Infinity : piece.length);
    return length(subtract(landing, addScaled(piece.from, piece.startTangent, held)));
  }
  return distance(landing, interpolate(piece.from, piece.to, 0.5)) - distance(piece.from, piece.to) / 2;
}
