/**
 * A bend given the angle that a shop would rather set: which of its three places moves, and by how much. The bend lies in the plane of its corner
 * and the places before and after it, and stays in it.
 *
 * The place after (or before) can swing about the corner; it then stands on a ray from the corner, and one of its coordinates stays what it
 * was. Or the corner slides along one of its two legs. What is moved is given as a ray, so the leg keeps its direction while the car is measured
 * again; the angle is kept on the member too, and found where it no longer comes out (checks/bend-findings.ts).
 */
import { toRadians, type Degrees } from '../geometry/angle.ts';
import {
  distance,
  dot,
  mirrored,
  normalize,
  rejectFrom,
  scale,
  addScaled,
  subtract,
  type Axis,
  type Vec3,
} from '../geometry/vector.ts';
import { keepAngle } from '../edit/members.ts';
import { setPlace } from '../edit/nodes.ts';
import type { Member } from '../job/kinds/member.ts';
import type { RayPlace } from '../job/places/ray.ts';
import { bareId, isPrimed, primed, type NodeId, type NodeRef } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import { layOut } from '../solve/lay-out.ts';
import { sequenceOf } from '../solve/sequence.ts';
import type { Frame } from '../solve/types.ts';

/** One way to come to the angle. */
export interface Rounding {
  readonly node: NodeId;
  /** How far it moves, mm. */
  readonly by: number;
  /** The coordinate that stays what it was; null where a corner slides along its leg. */
  readonly keeps: Axis | null;
  readonly at: RayPlace;
}

/** A coordinate that changes by less than this share of the way along the ray is no good measure of it. */
const ALONG = 0.15;
/** Degrees that a bend may come out off the angle that was asked for: rounding over a chain of nodes. */
const HELD = 1e-6;

/**
 * The ways in which the bend at this place of the path (0 = end A, which has none) comes to the angle, degrees, the shortest first; those that
 * do not come to it in the frame, because something else hangs on what would move, are left out. Empty where there is no bend.
 */
export function roundingsOf(frame: Frame, member: Member, index: number, angle: Degrees): readonly Rounding[] {
  const refs = [member.path[index - 1], member.path[index], member.path[index + 1]] as const;
  if (refs.some((ref) => ref === undefined)) return [];
  const [before, corner, after] = refs as readonly [NodeRef, NodeRef, NodeRef];
  const ways = [
    ...swings(frame, before, corner, after, angle),
    ...swings(frame, after, corner, before, angle),
    ...slides(frame, before, corner, after, angle),
    ...slides(frame, after, corner, before, angle),
  ];
  return ways.filter((way) => comesTo(frame, member, index, way, angle)).toSorted((a, b) => a.by - b.by);
}

/** The job with the bend at that angle, which is kept. */
export const rounded = (job: Job, member: Member, corner: NodeRef, { node, at }: Rounding, angle: Degrees): Job =>
  keepAngle(setPlace(job, node, at), member.id, corner, angle);

const placeOf = (frame: Frame, ref: NodeRef): Vec3 => frame.nodes.get(ref)!;

/** `far` swings about the corner, away from the leg that comes from `near`. */
function swings(frame: Frame, near: NodeRef, corner: NodeRef, far: NodeRef, angle: Degrees): readonly Rounding[] {
  if (bareId(far) === bareId(corner) || bareId(far) === bareId(near)) return [];
  const [p, c, n] = [placeOf(frame, near), placeOf(frame, corner), placeOf(frame, far)];
  const along = normalize(subtract(c, p));
  const aside = rejectFrom(subtract(n, c), along);
  const turned = toRadians(angle);
  const direction = addScaled(scale(along, Math.cos(turned)), normalize(aside), Math.sin(turned));
  return ([0, 1, 2] as const).flatMap((axis): readonly Rounding[] => {
    const reach = (n[axis] - c[axis]) / direction[axis];
    if (Math.abs(direction[axis]) < ALONG || !(reach > 0)) return [];
    const by = distance(addScaled(c, direction, reach), n);
    return [rayTo(far, corner, direction, axis, n[axis], by, 'xyz'[axis] as Axis)];
  });
}

/** The corner slides along the leg that comes from `near`, until the way to `far` turns by the angle. */
function slides(frame: Frame, near: NodeRef, corner: NodeRef, far: NodeRef, angle: Degrees): readonly Rounding[] {
  if (bareId(near) === bareId(corner) || bareId(far) === bareId(corner)) return [];
  const [p, c, n] = [placeOf(frame, near), placeOf(frame, corner), placeOf(frame, far)];
  const along = normalize(subtract(c, p));
  const aside = Math.hypot(...rejectFrom(subtract(n, p), along));
  const reach = dot(subtract(n, p), along) - aside / Math.tan(toRadians(angle));
  if (!(reach > 0)) return [];
  const to = addScaled(p, along, reach);
  const axis = ([0, 1, 2] as const).reduce(
    (most, each) => (Math.abs(along[each]) > Math.abs(along[most]) ? each : most),
    0,
  );
  return [rayTo(corner, near, along, axis, to[axis], distance(to, c), null)];
}

/** As the bare node is given: for an image all is seen in the mirror. */
function rayTo(
  node: NodeRef,
  from: NodeRef,
  direction: Vec3,
  axis: 0 | 1 | 2,
  value: number,
  by: number,
  keeps: Axis | null,
): Rounding {
  const flip = isPrimed(node);
  return {
    node: bareId(node),
    by,
    keeps,
    at: {
      kind: 'ray',
      from: flip ? primed(from) : from,
      direction: flip ? mirrored(direction) : direction,
      until: { axis: 'xyz'[axis] as Axis, value: flip && axis === 1 ? -value : value },
    },
  };
}

/** Tried: laid out so, the bend is there and has the angle. */
function comesTo(frame: Frame, { id, path }: Member, index: number, { node, at }: Rounding, angle: Degrees): boolean {
  const job = setPlace(frame.job, node, at);
  const sequence = sequenceOf(job);
  if (!sequence.ok) return false;
  const layout = layOut(job, sequence.value, frame.drawn);
  if (!layout.ok) return false;
  const place = layout.value.nodes.get(path[index]!)!;
  const bar = layout.value.bars.find((each) => each.id === id)!;
  const bend = bar.centreline.bends.find(({ corner }) => distance(corner, place) === 0);
  return bend !== undefined && Math.abs(bend.angle - toRadians(angle)) <= toRadians(HELD);
}
