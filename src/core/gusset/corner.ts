/**
 * The corner that a gusset stands in: the two straights along which its legs run, the plane half-way between their axes and where they meet. On that plane
 * places are counted from where the axes meet, [x, y]: x along leg 1, y square to it on the side of leg 2; z goes out of the plane, along leg 1 x leg 2.
 * Across a bend the two straights are those on either side of it, and the axes meet in its sharp corner.
 *
 * Axes that pass each other by MEETING_DISTANCE or less count as meeting: the sheet lies half-way. Further apart, too flat or too sharp, past a tube's straight,
 * off the node by more than the
 * tube's diameter: no gusset, and why.
 */
import { toRadians, type Degrees, type Radians } from '../geometry/angle.ts';
import { nearestOnPath, type Path } from '../geometry/path.ts';
import { MEETING_DISTANCE, ROUNDING } from '../geometry/tolerance.ts';
import {
  addScaled,
  cross,
  distance,
  dot,
  interpolate,
  length,
  scale,
  subtract,
  type Vec3,
} from '../geometry/vector.ts';
import type { TubeRef } from '../job/reference.ts';
import type { Bar, Bend } from '../solve/types.ts';

/** The way along a bar, from a node on it. */
export interface Way {
  readonly bar: Bar;
  readonly towards: 'A' | 'B';
}

export interface Side extends Way {
  /** Unit, from the node along the leg. */
  readonly direction: Vec3;
  /** Of the tube's outside, mm. */
  readonly radius: number;
  /** Height of its axis over the plane, mm: 0 where the axes meet. */
  readonly height: number;
  /** Along the axis from where the axes meet to where the straight ends: at a bend, or at the deepest of the tube's cut; mm. */
  readonly room: number;
  /** The same the other way: from where the axes meet back to where the straight begins; across a bend no end, for there is none behind. */
  readonly behind: number;
}

export interface Corner {
  readonly place: Vec3;
  readonly sides: readonly [Side, Side];
  /** Unit, out of the plane. */
  readonly normal: Vec3;
  /** Between the two legs, (0, pi). */
  readonly angle: Radians;
  /** Where it stands across one: from the corner to either tangent and the centreline's radius, mm. */
  readonly bend: { readonly number: number; readonly setBack: number; readonly radius: number } | null;
}

/** Why there is no such corner. */
export type NoCorner =
  /** The bar passes the node so far off, mm: more than its diameter. */
  | { readonly why: 'off-node'; readonly bar: TubeRef; readonly off: number }
  /** The node lies in that bend of the bar. */
  | { readonly why: 'in-bend'; readonly bar: TubeRef; readonly bend: number }
  /** No bend of the bar has its corner at the node. */
  | { readonly why: 'no-bend'; readonly bar: TubeRef }
  /** The axes pass each other so far off, mm. */
  | { readonly why: 'skew'; readonly off: number }
  | { readonly why: 'angle'; readonly angle: Radians };

/** Between the legs: beyond these a sheet is a needle or a strip (ours, no rule). */
export const LEAST_ANGLE: Degrees = 20;
export const GREATEST_ANGLE: Degrees = 160;

/** The corner at a node's place between two ways along bars; across a bend both go along one bar. */
export function cornerAt(node: Vec3, ways: readonly [Way, Way]): Corner | NoCorner {
  const [one, two] = ways;
  if (one.bar.id === two.bar.id) return acrossBend(node, one, two);
  const lines = [lineFrom(node, one), lineFrom(node, two)] as const;
  const [a, b] = lines;
  if ('why' in a) return a;
  if ('why' in b) return b;
  return meeting(a, b, null);
}

/** A straight of a bar: a place on its axis, the way along it and how far it goes that way. */
interface Straight extends Way {
  readonly from: Vec3;
  readonly direction: Vec3;
  readonly room: number;
  readonly behind: number;
}

function lineFrom(node: Vec3, way: Way): Straight | NoCorner {
  const { bar, towards } = way;
  const { point, at, distance: off } = nearestOnPath(bar.path, node);
  if (off > bar.section.outerDiameter) return { why: 'off-node', bar: bar.id, off };
  const piece = pieceFrom(bar.path, at, towards);
  if (piece.kind === 'arc') {
    const bend = bar.bends.findIndex(({ start, end }) => at > start - ROUNDING && at < end + ROUNDING);
    return { why: 'in-bend', bar: bar.id, bend: bend + 1 };
  }
  const sense = towards === 'B' ? 1 : -1;
  const ends = [piece.at + piece.length, piece.at] as const;
  const [end, start] = towards === 'B' ? ends : [ends[1], ends[0]];
  const direction = scale(piece.startTangent, sense);
  return {
    ...way,
    from: point,
    direction,
    room: sense * (end - at) - trimAt(bar, end),
    behind: sense * (at - start) - tipAt(bar, start),
  };
}

/** The piece on which one is that goes on from there; at the bar's end its last. */
function pieceFrom({ pieces }: Path, at: number, towards: 'A' | 'B'): Path['pieces'][number] {
  if (towards === 'B') return pieces.find((each) => at < each.at + each.length - ROUNDING) ?? pieces.at(-1)!;
  return pieces.findLast((each) => at > each.at + ROUNDING) ?? pieces[0]!;
}

/** What the cut of the bar's end takes there, at its deepest; 0 inside the bar. */
function trimAt({ path, ends }: Bar, at: number): number {
  if (at <= ROUNDING) return Math.max(0, ends[0].throat ?? 0);
  return at >= path.length - ROUNDING ? Math.max(0, ends[1].throat ?? 0) : 0;
}

/** How far the longest line of the tube's wall begins in it there; below zero where it stands past its node. */
function tipAt({ path, ends }: Bar, at: number): number {
  if (at <= ROUNDING) return ends[0].tip ?? 0;
  return at >= path.length - ROUNDING ? (ends[1].tip ?? 0) : 0;
}

function acrossBend(node: Vec3, one: Way, two: Way): Corner | NoCorner {
  const { bar } = one;
  const index = bar.bends.findIndex(({ corner }) => distance(corner, node) <= MEETING_DISTANCE);
  const bend = bar.bends[index];
  if (bend === undefined) return { why: 'no-bend', bar: bar.id };
  const { setBack, radius } = bend;
  return meeting(besideBend(bar, bend, index, one), besideBend(bar, bend, index, two), {
    number: index + 1,
    setBack,
    radius,
  });
}

/** From the sharp corner along the straight on that side of the bend. */
function besideBend(bar: Bar, bend: Bend, index: number, way: Way): Straight {
  const [before, after] = tangentsOf(bar, bend);
  const isB = way.towards === 'B';
  const straight = bar.straights[isB ? index + 1 : index]!;
  return {
    ...way,
    from: bend.corner,
    direction: isB ? after : scale(before, -1),
    room: bend.setBack + straight - trimAt(bar, isB ? bend.end + straight : bend.start - straight),
    behind: Infinity,
  };
}

/** Unit, from end A to end B: before the bend and after it. */
export function tangentsOf({ path }: Bar, bend: Bend): readonly [Vec3, Vec3] {
  const arc = path.pieces.find(({ kind, at }) => kind === 'arc' && Math.abs(at - bend.start) <= ROUNDING)!;
  return [arc.startTangent, arc.endTangent];
}

function meeting(a: Straight, b: Straight, bend: Corner['bend']): Corner | NoCorner {
  const out = cross(a.direction, b.direction);
  const angle = Math.atan2(length(out), dot(a.direction, b.direction));
  if (angle < toRadians(LEAST_ANGLE) || angle > toRadians(GREATEST_ANGLE)) return { why: 'angle', angle };
  const normal = scale(out, 1 / length(out));
  const apart = subtract(b.from, a.from);
  const off = dot(apart, normal);
  if (Math.abs(off) > MEETING_DISTANCE) return { why: 'skew', off: Math.abs(off) };
  // How far along each axis the two come nearest: (apart x the other's direction) . normal / sin angle.
  const sine = length(out);
  const alongA = dot(cross(apart, b.direction), normal) / sine;
  const alongB = dot(cross(apart, a.direction), normal) / sine;
  const nearest = [addScaled(a.from, a.direction, alongA), addScaled(b.from, b.direction, alongB)] as const;
  const sideOf = ({ bar, towards, direction, room, behind }: Straight, along: number, height: number): Side => ({
    bar,
    towards,
    direction,
    radius: bar.section.outerDiameter / 2,
    height,
    room: room - along,
    behind: behind + along,
  });
  return {
    place: interpolate(nearest[0], nearest[1], 0.5),
    sides: [sideOf(a, alongA, -off / 2), sideOf(b, alongB, off / 2)],
    normal,
    angle,
    bend,
  };
}

/** In car axes: of a place on the corner's plane, x and y, so far over it, mm. */
export function inCar({ place, sides, normal }: Corner, [x, y]: readonly [number, number], z: number): Vec3 {
  const { direction } = sides[0];
  return addScaled(addScaled(addScaled(place, direction, x), cross(normal, direction), y), normal, z);
}
