/**
 * The place that a pointer means, for a tube that is being drawn. In this order: a named place within reach; where two lines cross that begin at
 * places of the tube or at places lately pointed at; anywhere on the tube that is seen there; where a line from the place before comes in line
 * with a place that is near on the screen; straight along an axis of the car, or straight on, as the tube runs to the place before; and a
 * place in a plane. Pure; pixels of the bay.
 *
 * A pixel with nothing under it is a place in the one plane of the car, of those through the place before, that faces the view most; for the
 * first place on the floor or, where that is seen on edge, in the centre plane. A coordinate that was found in line with a place is that place's.
 */
import { nearestToLine, runsAlong } from '../../core/geometry/nearest-to-line.ts';
import { placeAt } from '../../core/geometry/path.ts';
import { placesInPlane } from '../../core/geometry/plane-places.ts';
import { ANGLE_ROUNDING, FARTHEST, ROUNDING } from '../../core/geometry/tolerance.ts';
import {
  addScaled,
  distance,
  dot,
  mirrored,
  normalize,
  subtract,
  X_AXIS,
  Y_AXIS,
  Z_AXIS,
  type Vec3,
} from '../../core/geometry/vector.ts';
import type { AxisNumber, Ground, InSpace } from '../../core/shape/draw/ground.ts';
import { rankOf, snapsOf, type Snap } from '../../core/shape/draw/snaps.ts';
import type { Bar, Frame } from '../../core/solve/types.ts';
import type { Projection } from '../camera/projection.ts';
import { tubeAt, type Sight } from '../canvas/sight.ts';

/** What a pointer can mean, made once for each frame and each place that is drawn. */
export interface Targets {
  readonly frame: Frame;
  readonly sight: Sight;
  readonly named: readonly Snap[];
  readonly drawn: readonly Snap[];
  /** The place before; null for the first. */
  readonly last: Snap | null;
  /** What a person is about to line up with: the place before, the first one, and what was lately pointed at. No two at one place. */
  readonly meant: readonly Snap[];
}

/** Pixels. */
export interface Pointer {
  readonly x: number;
  readonly y: number;
  /** How far a pointer of this kind may miss. */
  readonly reach: number;
}

const AXES: readonly AxisNumber[] = [0, 1, 2];
const DIRECTIONS = [X_AXIS, Y_AXIS, Z_AXIS] as const;

/** A tube that rises less than this a mm is nearly level: no one place of it is level with another. */
const LEAST_RISE = 0.1;

/**
 * With the places drawn so far, which a tube may come back to.
 *
 * @param lately nodes, points and own places, the latest first
 */
export function targetsOf(frame: Frame, sight: Sight, drawn: readonly Snap[], lately: readonly Snap[] = []): Targets {
  const last = drawn.at(-1) ?? null;
  const level = last === null ? [] : [...frame.bars.values()].flatMap((bar) => levelOn(bar, last));
  const own = [...drawn, ...drawn.flatMap(imageOf)];
  const meant = distinct([...drawn.slice(-1), ...drawn.slice(0, 1), ...lately]);
  return { frame, sight, drawn, last, meant, named: [...own, ...snapsOf(frame), ...level] };
}

/** Whether another place can take a coordinate of it: a node or a point, or a place of the tube itself, which will be a node. */
export const isOwner = ({ drawn }: Pick<Targets, 'drawn'>, ground: Ground): boolean =>
  ground.kind === 'node' || ground.kind === 'point' || drawn.some((own) => own.ground === ground);

/** The first of those at one place. */
const distinct = (snaps: readonly Snap[]): readonly Snap[] =>
  snaps.filter(({ at }, i) => snaps.findIndex((each) => distance(each.at, at) <= ROUNDING) === i);

/** The mirror image of a place of the tube, so that a hoop comes out alike on both sides; none of what lies on the centre plane. */
const imageOf = ({ ground, at }: Snap): readonly Snap[] =>
  ground.kind === 'image' || at[1] === 0 ? [] : [{ ground: { kind: 'image', of: ground }, at: mirrored(at) }];

const levelOn = (bar: Bar, last: Snap): readonly Snap[] =>
  placesInPlane(bar.path, 2, last.at[2]).flatMap(({ at, point, tangent }, i): readonly Snap[] =>
    Math.abs(tangent[2]) < LEAST_RISE || at > bar.developedLength
      ? []
      : [{ ground: { kind: 'level', tube: bar.id, with: last.ground, nth: i + 1 }, at: point }],
  );

/** What the pointer means; null where the view gives no plane to lay a place in. `step`, mm: of lengths and coordinates. */
export function aimAt(targets: Targets, view: Projection, pointer: Pointer, step: number): Snap | null {
  const { meant, last } = targets;
  const begins = lineStarts(targets, view);
  const near = nearOnScreen(targets, view, pointer);
  return (
    namedAt(targets, view, pointer) ??
    crossingAt(begins, meant, view, pointer) ??
    onTubeAt(targets, view, pointer, step) ??
    (last && crossingAt([last], near, view, pointer)) ??
    straightAt(begins, straightOn(targets), view, pointer, step) ??
    inPlane(targets, near, view, pointer, step)
  );
}

/** A named place is a spot of some size. */
const SPOT = 6;
/** Pixels: what is hardly nearer than another lies under the pointer as that does. */
const AS_NEAR = 3;

/** The nearest in pixels; of several as near the one of the first rank, then the one nearer to the eye. */
function namedAt({ named }: Targets, view: Projection, { x, y, reach }: Pointer): Snap | null {
  let within: { readonly aim: Snap; readonly away: number; readonly depth: number }[] = [];
  let least = SPOT + reach;
  for (const aim of named) {
    const seen = view.toScreen(aim.at);
    const away = Math.hypot(seen.x - x, seen.y - y);
    if (away > least + AS_NEAR || away > SPOT + reach) continue;
    within.push({ aim, away, depth: seen.depth });
    least = Math.min(least, away);
  }
  within = within.filter(({ away }) => away <= least + AS_NEAR);
  within.sort((a, b) => rankOf(a.aim) - rankOf(b.aim) || b.depth - a.depth);
  return within[0]?.aim ?? null;
}

/** Pixels within which a place is near the pointer, and how many of them count: of a whole cage every pixel would be in line with something. */
const NEAR = 90;
const MOST_NEAR = 3;

function nearOnScreen(targets: Targets, view: Projection, { x, y }: Pointer): readonly Snap[] {
  const { named, meant } = targets;
  const near = named.flatMap((snap) => {
    if (!isOwner(targets, snap.ground)) return [];
    const seen = view.toScreen(snap.at);
    const away = Math.hypot(seen.x - x, seen.y - y);
    return away <= NEAR ? [{ snap, away }] : [];
  });
  near.sort((a, b) => a.away - b.away);
  const snaps = distinct(near.map(({ snap }) => snap));
  return snaps.filter(({ at }) => meant.every((each) => distance(each.at, at) > ROUNDING)).slice(0, MOST_NEAR);
}

/** Of the unit vector to the eye, the part along an axis of the car: from here on depth along that axis is not seen. */
const LOOKS_ALONG = 0.98;

/** Where lines begin: at all that is meant, but in a view along an axis at the place before alone, as deep as which the pointer means then. */
function lineStarts({ meant, last }: Targets, { toEye }: Projection): readonly Snap[] {
  const isAlong = toEye.some((part) => Math.abs(part) >= LOOKS_ALONG);
  return isAlong && last !== null ? [last] : meant;
}

/** Whose the coordinate is that another place takes: of what lies on the centre plane the offset is a number, 0. */
export const ownerOf = ({ ground, at }: Snap, axis: AxisNumber): Ground | null =>
  axis === 1 && at[1] === 0 ? null : ground;

/** Whose each coordinate is; null of a number. */
type Owners = NonNullable<InSpace['by']>;

export function inSpace(position: Vec3, by: Owners): Snap {
  const isOwned = by.some((owner) => owner !== null);
  return { ground: { kind: 'space', position, ...(isOwned && { by }) }, at: position };
}

/** Pixels: of crossings as near to the pointer as that the first counts, one on a line of the place before: a plumb leg is meant more often than one nearly so. */
const HARDLY = 3;

/**
 * The crossing nearest the pointer of a line along an axis of the car from one of `from` with what is in line with one of `to`: plumb over the
 * one, as high as the other.
 */
function crossingAt(
  from: readonly Snap[],
  to: readonly Snap[],
  view: Projection,
  { x, y, reach }: Pointer,
): Snap | null {
  let nearest: Snap | null = null;
  let least = SPOT + reach;
  const meet = (line: Snap, axis: AxisNumber, other: Snap): void => {
    if (Math.abs(line.at[axis] - other.at[axis]) <= ROUNDING) return;
    const at = withAxis(line.at, axis, other.at[axis]);
    const seen = view.toScreen(at);
    const away = Math.hypot(seen.x - x, seen.y - y);
    if (away >= (nearest === null ? least : least - HARDLY)) return;
    least = away;
    nearest = inSpace(at, withAxis([line.ground, line.ground, line.ground], axis, ownerOf(other, axis)));
  };
  for (const line of from) {
    for (const axis of AXES) {
      for (const other of to) meet(line, axis, other);
    }
  }
  return nearest;
}

/** The three with another in the place of the one. */
export const withAxis = <T>([x, y, z]: readonly [T, T, T], axis: AxisNumber, value: T): readonly [T, T, T] => [
  axis === 0 ? value : x,
  axis === 1 ? value : y,
  axis === 2 ? value : z,
];

/** On the centreline nearest the line of sight, so many whole steps from end A. */
function onTubeAt({ frame, sight }: Targets, view: Projection, { x, y, reach }: Pointer, step: number): Snap | null {
  const bar = frame.bars.get(tubeAt(sight, view, x, y, reach)?.tube.bar ?? '');
  if (bar === undefined || bar.developedLength < step || runsAlong(bar.path, view.toEye)) return null;
  const { at } = nearestToLine(bar.path, view.toPlace(x, y), view.toEye);
  const along = Math.min(bar.developedLength, Math.round(at / step) * step);
  const ground: Ground = { kind: 'along', tube: bar.id, distance: along };
  return { ground, at: placeAt(bar.path, along).point };
}

/** A line that points at the eye more than this cannot be aimed along. */
const LEAST_LINE = 0.3;

/** On from the place before as the tube comes to it, which leaves no bend there: null on the first leg, and along an axis, which is a line already. */
function straightOn({ drawn, last }: Targets): Way | null {
  const before = drawn.at(-2);
  if (last === null || before === undefined) return null;
  const way = normalize(subtract(last.at, before.at));
  return way.some((part) => Math.abs(part) >= 1 - ANGLE_ROUNDING) ? null : { line: last, way };
}

/** A line from a place; of unit length. */
interface Way {
  readonly line: Snap;
  readonly way: Vec3;
}

/** Along an axis from one of `from`, or straight `on`, so many whole steps, where the pointer is near enough to that line. */
function straightAt(
  from: readonly Snap[],
  on: Way | null,
  view: Projection,
  { x, y, reach }: Pointer,
  step: number,
): Snap | null {
  let nearest: { readonly line: Snap; readonly axis: AxisNumber | null; readonly mm: number } | null = null;
  let least = SPOT + reach;
  const pass = ({ line, way }: Way, axis: AxisNumber | null): void => {
    const start = view.toScreen(line.at);
    const [dx, dy] = [x - start.x, y - start.y];
    const [ux, uy] = [dot(way, view.right), -dot(way, view.up)];
    const size = Math.hypot(ux, uy);
    if (size < LEAST_LINE) return;
    const away = Math.abs(dx * uy - dy * ux) / size;
    const mm = (dx * ux + dy * uy) / (size * size) / view.pixelsPerMm;
    // Straight on is one way alone: the other doubles back.
    if (away >= least || (axis === null && mm < step)) return;
    least = away;
    nearest = { line, axis, mm };
  };
  for (const line of from) for (const axis of AXES) pass({ line, way: DIRECTIONS[axis] }, axis);
  if (on !== null) pass(on, null);
  if (nearest === null) return null;
  // Read through a type of its own: the compiler does not see what a closure assigned.
  const { line, axis, mm } = nearest as { readonly line: Snap; readonly axis: AxisNumber | null; readonly mm: number };
  const { at, ground } = line;
  const whole = Math.round(mm / step) * step;
  if (axis === null) {
    const { way } = on!;
    // A coordinate that the tube does not change on its way there is the place before's still.
    const [x0, y0, z0] = way.map((part) => (part === 0 ? ground : null));
    return inSpace(addScaled(at, way, whole), [x0!, y0!, z0!]);
  }
  const by = withAxis([ground, ground, ground], axis, null);
  if (axis === 1 && at[1] !== 0 && Math.abs(at[1] + mm) * view.pixelsPerMm <= SPOT + reach) {
    return inSpace([at[0], 0, at[2]], by);
  }
  return whole === 0 ? null : inSpace(withAxis(at, axis, at[axis] + whole), by);
}

/** Of a unit vector square to the plane, the part towards the eye: seen flatter than this it is no plane to lay a place in. */
const LEAST_FLOOR = 0.2;

/** Each of the two other coordinates may be that of a place which is meant or near. */
function inPlane(
  { last, meant }: Targets,
  near: readonly Snap[],
  view: Projection,
  { x, y, reach }: Pointer,
  step: number,
): Snap | null {
  const across = planeFor(view, last);
  if (across === null) return null;
  const value = last?.at[across] ?? 0;
  const seen = view.toPlace(x, y);
  const under = addScaled(seen, view.toEye, (value - seen[across]) / view.toEye[across]);
  if (under.some((each) => Math.abs(each) > FARTHEST)) return null;
  let at = withAxis<number>(under, across, value);
  let by: Owners = withAxis([null, null, null], across, last?.ground ?? null);
  for (const axis of AXES) {
    if (axis === across) continue;
    const pixels = Math.hypot(dot(DIRECTIONS[axis], view.right), dot(DIRECTIONS[axis], view.up)) * view.pixelsPerMm;
    // Adding 0 takes the sign off a zero, which a file has not.
    let value = Math.round(under[axis] / step) * step + 0;
    let owner: Ground | null = null;
    let least = Infinity;
    const take = (each: number, whose: Ground | null, within: number): void => {
      const away = Math.abs(each - under[axis]) * pixels;
      if (away >= Math.min(least, within)) return;
      least = away;
      [value, owner] = [each, whose];
    };
    if (axis === 1) take(0, null, SPOT + reach);
    for (const other of meant) if (other !== last) take(other.at[axis], ownerOf(other, axis), SPOT + reach);
    // Of those that are merely near the lines are thin: nobody has asked for them.
    for (const other of near) take(other.at[axis], ownerOf(other, axis), reach);
    at = withAxis(at, axis, value);
    by = withAxis(by, axis, owner);
  }
  return inSpace(at, by);
}

/** The axis that the plane is square to. */
function planeFor({ toEye }: Projection, last: Snap | null): AxisNumber | null {
  if (last === null) return Math.abs(toEye[2]) >= LEAST_FLOOR ? 2 : Math.abs(toEye[1]) >= LEAST_FLOOR ? 1 : null;
  const facing = DIRECTIONS.map((axis) => Math.abs(dot(axis, toEye)));
  return facing.indexOf(Math.max(...facing)) as AxisNumber;
}
