/**
 * The outlines of tubes as they are seen: hidden lines are left out.
 *
 * Along a tube the outline lies where the surface turns away from the eye: centreline +- radius x (tangent x eye), exact
 * for cylinders and for the arcs of bends. It begins and ends at the trim of the tube's cut, whose own curve is drawn too: at a
 * cope that is the line where two tubes meet. Where a line passes behind another tube is found by halving.
 */
import { toDegrees, signedAngle } from '../core/geometry/angle.ts';
import { ANGLE_ROUNDING } from '../core/geometry/tolerance.ts';
import {
  addScaled,
  cross,
  distance,
  dot,
  interpolate,
  normalize,
  rotateAbout,
  scale,
  type Vec3,
} from '../core/geometry/vector.ts';
import type { SolvedTube, TubeEnd } from '../core/solve/types.ts';
import { project, type View } from './projection.ts';
import { jointsOf, seenPast, type Seen } from './rods.ts';
import type { Place2 } from './types.ts';

/** Radians between tube and line of sight: nearer to end-on than this a tube has no outline along it. */
const END_ON = 1e-4;

export interface Outline {
  /** Of the tube, in the order given. */
  readonly tube: number;
  readonly kind: 'edge' | 'cut';
  /** In mm of the view. */
  readonly places: readonly Place2[];
}

/** mm of the car between two looks along a line, and how closely the place is found where it is lost from sight. */
const LOOK = 8;
const HALVINGS = 5;
/** Degrees between two places of a cut's curve. */
const CUT_STEP = 5;
/** Radians: an outline that turns further between two places is rounded. */
const TURN_STEP = Math.PI / 12;
const QUARTER_TURN = Math.PI / 2;

/** Every line that is seen of every tube. */
export function seenOutlines(tubes: readonly SolvedTube[], view: View): readonly Outline[] {
  const seen = seenPast(tubes, view);
  return tubes.flatMap((tube, number) => [
    ...[-1, 1].flatMap((side) =>
      seenRuns(edgeOf(tube, view, side), number, seen, view).map((places): Outline => ({
        tube: number,
        kind: 'edge',
        places,
      })),
    ),
    ...([0, 1] as const).flatMap((which) =>
      seenRuns(cutOf(tube, which, view), number, seen, view).map((places): Outline => ({
        tube: number,
        kind: 'cut',
        places,
      })),
    ),
  ]);
}

/** A place of a line, and the rod of its own tube that the line to the next place runs along. */
interface LinePlace {
  readonly place: Vec3;
  readonly rod: number;
  /** True where its own tube is in front of the place. */
  readonly turnedAway?: boolean;
}

/**
 * One side's outline. Where the tube turns past the eye the outline changes sides, round the end of the tube that points at
 * the eye: there the spoke is turned in steps.
 */
function edgeOf(tube: SolvedTube, { toEye }: View, side: number): LinePlace[] {
  const radius = tube.section.outerDiameter / 2;
  const joints = jointsOf(tube);
  const line: LinePlace[] = [];
  let last: { spoke: Vec3; point: Vec3 } | null = null;
  joints.forEach(({ point, tangent }, i) => {
    const across = cross(tangent, toEye);
    if (dot(across, across) < END_ON ** 2) return;
    const spoke = scale(normalize(across), side);
    const rod = Math.min(i, joints.length - 2);
    if (last !== null) {
      const turn = signedAngle(last.spoke, spoke, toEye);
      const steps = Math.ceil(Math.abs(turn) / TURN_STEP);
      const nearer = dot(point, toEye) > dot(last.point, toEye);
      for (let step = 1; step < steps; step++) {
        const turned = rotateAbout(last.spoke, toEye, (turn * step) / steps);
        const foot =
          Math.abs(turn) > QUARTER_TURN ? (nearer ? point : last.point) : interpolate(last.point, point, step / steps);
        line.push({ place: addScaled(foot, turned, radius), rod: Math.max(0, rod - 1) });
      }
    }
    line.push({ place: addScaled(cutBack(tube, i, joints.length, point, spoke), spoke, radius), rod });
    last = { spoke, point };
  });
  return line;
}

/** The centreline's place; at the ends moved to where the wall on this side is cut off. */
function cutBack({ ends }: SolvedTube, i: number, count: number, point: Vec3, spoke: Vec3): Vec3 {
  const end = i === 0 ? ends[0] : i === count - 1 ? ends[1] : null;
  if (end === null) return point;
  return addScaled(
    end.position,
    end.direction,
    trimAt(end, toDegrees(signedAngle(end.reference, spoke, end.direction))),
  );
}

/** Of the outer wall, mm from the node; the tip's, or none, where nothing is reached. */
function trimAt(end: TubeEnd, degrees: number): number {
  const round = (degrees + 360) % 360;
  const before = Math.floor(round) % 360;
  const [one, other] = [end.outer[before]!, end.outer[(before + 1) % 360]!];
  const trim = one + (round - Math.floor(round)) * (other - one);
  return Number.isNaN(trim) ? (end.tip ?? 0) : trim;
}

/** The curve of an end's cut, once round. */
function cutOf(tube: SolvedTube, which: 0 | 1, { toEye }: View): LinePlace[] {
  const end = tube.ends[which];
  const radius = tube.section.outerDiameter / 2;
  const across = cross(end.direction, end.reference);
  const showsItsFace = end.fit !== 'cope' && dot(end.direction, toEye) < 0;
  const rod = which === 0 ? 0 : Infinity;
  const places: LinePlace[] = [];
  for (let degree = 0; degree <= 360; degree += CUT_STEP) {
    const angle = (degree * Math.PI) / 180;
    const spoke = addScaled(scale(end.reference, Math.cos(angle)), across, Math.sin(angle));
    const foot = addScaled(end.position, end.direction, trimAt(end, degree));
    places.push({
      place: addScaled(foot, spoke, radius),
      rod,
      turnedAway: !showsItsFace && dot(spoke, toEye) < -ANGLE_ROUNDING,
    });
  }
  return places;
}

/** The parts of a line that are seen, on the view. */
function seenRuns(line: readonly LinePlace[], tube: number, seen: Seen, view: View): Place2[][] {
  const runs: Place2[][] = [];
  let open: Place2[] = [];
  const close = (): void => {
    if (open.length > 1) runs.push(open);
    open = [];
  };
  const put = (place: Vec3): void => {
    const { x, y } = project(view, place);
    open.push({ x, y });
  };
  for (let i = 1; i < line.length; i++) {
    const [from, to] = [line[i - 1]!, line[i]!];
    if (from.turnedAway === true || to.turnedAway === true) {
      close();
      continue;
    }
    const at = (t: number): Vec3 => interpolate(from.place, to.place, t);
    const isSeen = (t: number): boolean => seen(at(t), tube, from.rod);
    const looks = Math.max(1, Math.ceil(distance(from.place, to.place) / LOOK));
    let was = isSeen(0);
    if (!was) close();
    else if (open.length === 0) put(from.place);
    for (let look = 1; look <= looks; look++) {
      const now = isSeen(look / looks);
      if (now !== was) put(at(changeBetween(isSeen, (look - 1) / looks, look / looks, was)));
      if (now && look === looks) put(to.place);
      if (!now) close();
      was = now;
    }
  }
  close();
  return runs;
}

/** Between two looks along a line, where it comes into sight or is lost from it. */
function changeBetween(isSeen: (t: number) => boolean, low: number, high: number, was: boolean): number {
  let [from, to] = [low, high];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (from + to) / 2;
    if (isSeen(middle) === was) from = middle;
    else to = middle;
  }
  return was ? from : to;
}
