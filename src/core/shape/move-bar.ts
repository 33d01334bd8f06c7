/**
 * A whole bar moved along one axis of the car: every node of its path comes to a coordinate by so much greater, whatever it is placed by. A node on another bar
 * slides along that until it is there; one that is placed from others of the path goes along with them (goes-along.ts). Car axes, mm.
 */
import { placeAt } from '../geometry/path.ts';
import { placesInPlane, slopeAt, type Slope } from '../geometry/plane-places.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import { addScaled, dot, X_AXIS, Y_AXIS, Z_AXIS, type Vec3 } from '../geometry/vector.ts';
import type { FrameNode } from '../job/kinds/node.ts';
import { bareId, isPrimed, primed, type NodeRef, type TubeRef } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import type { Frame } from '../solve/types.ts';
import { freedomOf, type Coordinate, type FreeInSpace } from './free-directions.ts';
import { goingOf } from './goes-along.ts';

/** A node of the path that is moved. */
interface Moved {
  /** mm by which its coordinate can grow, the least and the greatest; null where it cannot. */
  readonly reach: (axis: Coordinate) => Reach | null;
  readonly by: (job: Job, axis: Coordinate, mm: number) => Job;
}

type Reach = readonly [least: number, greatest: number];

const ANYWHERE: Reach = [-Infinity, Infinity];

const AXES: readonly Vec3[] = [X_AXIS, Y_AXIS, Z_AXIS];
const AXIS_NAMES = ['x', 'y', 'z'] as const;

/** A line goes along an axis where it makes at least so much of it a mm: 17 degrees off square to it. */
const LEAST_ALONG = 0.3;

/**
 * How the bar can be moved, from its middle; along one axis at a time. Those are open along which every node of it can go; not across the car
 * where both a node and its mirror image are on the path.
 *
 * @returns null where the frame does not hold the bar
 */
export function barFreedom(frame: Frame, bar: TubeRef): FreeInSpace | null {
  const solved = frame.bars.get(bar);
  if (solved === undefined) return null;
  const references = solved.member.path.map((reference) => (isPrimed(bar) ? primed(reference) : reference));
  const own = new Set(references.map(bareId));
  const nodes = frame.job.nodes
    .filter(({ id }) => own.has(id))
    .map((node) => {
      const isItself = references.includes(node.id);
      const isMoved = (to: NodeRef): boolean => references.includes(isItself ? to : primed(to));
      return { node, isMoved, free: isItself ? movedAs(frame, node) : mirroredMove(movedAs(frame, node)) };
    });
  const along = ([0, 1, 2] as const).map((axis) =>
    nodes.flatMap(({ node, isMoved, free }): readonly Moved[] => {
      const going = goingOf(frame.job, node, AXIS_NAMES[axis], isMoved);
      return going === 'along' ? [] : [going === 'free' ? free : NOWHERE];
    }),
  );
  const isAcross = references.some((reference) => references.includes(primed(reference)));
  const place = placeAt(solved.path, solved.path.length / 2).point;
  const reachOf = (axis: Coordinate): Reach | null => {
    if (axis === 1 && isAcross) return null;
    return along[axis]!.map(({ reach }) => reach(axis)).reduce((all, one) => all && one && both(all, one), ANYWHERE);
  };
  return {
    free: 'space',
    place,
    zero: place,
    single: true,
    open: ([0, 1, 2] as const).filter((axis) => reachOf(axis) !== null),
    moved(job, to) {
      const axis = ([0, 1, 2] as const).find((each) => to[each] !== place[each]);
      const reach = axis === undefined ? null : reachOf(axis);
      if (axis === undefined || reach === null) return job;
      const mm = Math.min(reach[1], Math.max(reach[0], to[axis] - place[axis]));
      return along[axis]!.reduce((changed, one) => one.by(changed, axis, mm), job);
    },
  };
}

const both = ([a, b]: Reach, [c, d]: Reach): Reach => [Math.max(a, c), Math.min(b, d)];

const NOWHERE: Moved = { reach: () => null, by: (job) => job };

/** Of the mirror image: what goes to the left there goes to the right here. */
const mirroredMove = ({ reach, by }: Moved): Moved => ({
  reach(axis) {
    const own = reach(axis);
    return own !== null && axis === 1 ? [-own[1], -own[0]] : own;
  },
  by: (job, axis, mm) => by(job, axis, axis === 1 ? -mm : mm),
});

function movedAs(frame: Frame, { id, at }: FrameNode): Moved {
  const freedom = freedomOf(frame, id);
  if (freedom === null) return NOWHERE;
  if (freedom.free === 'space') {
    const { place, open, moved } = freedom;
    return {
      reach: (axis) => (open.includes(axis) ? ANYWHERE : null),
      by: (job, axis, mm) => moved(job, addScaled(place, AXES[axis]!, mm)),
    };
  }
  const { host, value, moved } = freedom;
  if (host === null || at.kind !== 'on') {
    const share = (axis: Coordinate): number => dot(freedom.direction, AXES[axis]!);
    return {
      reach: (axis) => (Math.abs(share(axis)) < LEAST_ALONG ? null : ANYWHERE),
      by: (job, axis, mm) => moved(job, value + (mm / share(axis)) * freedom.perMm),
    };
  }
  const { path } = frame.bars.get(at.member)!;
  const { point, tangent } = placeAt(path, host.at);
  const slope = (axis: Coordinate): Slope | null =>
    Math.abs(tangent[axis]) < LEAST_ALONG ? null : slopeAt(path, axis, host.at);
  return {
    reach(axis) {
      const run = slope(axis);
      if (run === null) return null;
      const ends = [run.atFrom - point[axis], run.atTo - point[axis]];
      return [Math.min(...ends), Math.max(...ends)];
    },
    by(job, axis, mm) {
      const { from, to } = slope(axis)!;
      const there = placesInPlane(path, axis, point[axis] + mm).find(
        (each) => each.at >= from - ROUNDING && each.at <= to + ROUNDING,
      );
      return there === undefined ? job : moved(job, value + (there.at - host.at) * host.sense);
    },
  };
}
