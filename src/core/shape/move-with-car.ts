/**
 * The cage kept where it is on the car when the car's axes are laid otherwise: every place that is given by figures is given by the figures of the new
 * axes; a scan is laid with them. What goes by points, by tubes or by other nodes goes with them. A mirror image is taken in the new centre plane, so where that has moved
 * against the car, images move with it; how far is for whoever asks to say (solve both and compare).
 */
import { toDegrees, toRadians } from '../geometry/angle.ts';
import { placeAt } from '../geometry/path.ts';
import { moved, rigidFit, turned, type RigidMotion } from '../geometry/rigid-motion.ts';
import { boxFrame } from '../geometry/solid-box.ts';
import { AXIS_INDEX, mirrored, type Axis, type Vec3 } from '../geometry/vector.ts';
import type { Seat } from '../job/kinds/bent.ts';
import type { EndFit } from '../job/kinds/end.ts';
import type { BoxEnvelope } from '../job/kinds/envelope.ts';
import { mapKeeping } from '../job/map-keeping.ts';
import { movedPlacement, unsigned } from '../scan/place.ts';
import { isMeasured } from '../survey/network.ts';
import { measuredPoints } from '../survey/measured-points.ts';
import type { Place } from '../job/places.ts';
import type { Coordinate } from '../job/places/coordinate.ts';
import { bareId, isPrimed, type NodeId, type TubeRef } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import type { Frame } from '../solve/types.ts';
import { comesTo } from './ways.ts';

/** How the car moves in its axes from one survey of the same points to another; null with fewer than three measured points. */
export function motionBetween(before: Job, after: Job): RigidMotion | null {
  const places = new Map(measuredPoints(after).map(({ id, position }) => [id, position]));
  const both = measuredPoints(before).filter((point) => isMeasured(point) && places.has(point.id));
  if (both.length < 3) return null;
  return rigidFit(
    both.map(({ position }) => position),
    both.map(({ id }) => places.get(id)!),
  );
}

/** `job`, whose survey has its new axes, with all else moved as the car is; `frame`: as it was solved in the old ones. */
export function movedWithCar(job: Job, frame: Frame, motion: RigidMotion): Job {
  const there = movedFrame(frame, motion);
  return {
    ...job,
    points: mapKeeping(job.points, (point) =>
      isMeasured(point) ? point : { ...point, position: moved(motion, point.position) },
    ),
    nodes: mapKeeping(job.nodes, (node) => ({ ...node, at: movedPlace(there, motion, node.id, node.at) })),
    members: mapKeeping(job.members, (member) => ({
      ...member,
      ends: [movedEnd(motion, member.ends[0]), movedEnd(motion, member.ends[1])] as const,
    })),
    envelopes: mapKeeping(job.envelopes, (envelope) =>
      envelope.kind === 'box' ? movedBox(motion, envelope) : envelope,
    ),
    bent: mapKeeping(job.bent, ({ seat, ...run }) => ({
      ...run,
      ...(seat !== undefined && { seat: seat.map((each) => movedSeat(frame, motion, run.tube, each)) }),
    })),
    scans: job.scans.map((scan) => ({ ...scan, placement: movedPlacement(motion, scan.placement) })),
  };
}

/** Where nodes and points then are: images in the new centre plane. */
const movedFrame = (frame: Frame, motion: RigidMotion): Frame => ({
  ...frame,
  nodes: new Map(
    [...frame.nodes].map(([id, place]) => [
      id,
      isPrimed(id) ? mirrored(moved(motion, frame.nodes.get(bareId(id))!)) : moved(motion, place),
    ]),
  ),
  job: {
    ...frame.job,
    points: frame.job.points.map((point) => ({ ...point, position: moved(motion, point.position) })),
  },
});

function movedPlace(there: Frame, motion: RigidMotion, node: NodeId, at: Place): Place {
  const goal = there.nodes.get(node)!;
  /** The figure that leads there, whatever it goes by. */
  const figure = <C extends Coordinate>(given: C, axis: Axis): C =>
    given.value === undefined
      ? { ...given, plus: goal[AXIS_INDEX[axis]] - comesTo(there, { ...given, plus: 0 }, axis) }
      : { ...given, value: goal[AXIS_INDEX[axis]] };
  switch (at.kind) {
    case 'fixed':
      return { ...at, position: goal };
    case 'point':
      return {
        ...at,
        offset: unsigned(turned(motion, at.offset)),
        ...(at.clear !== undefined && { clear: { ...at.clear, direction: turned(motion, at.clear.direction) } }),
      };
    case 'on': {
      const offset = unsigned(turned(motion, at.offset));
      if (at.until === undefined) return { ...at, offset };
      return { ...at, offset, until: figure(at.until, at.until.axis) };
    }
    case 'ray':
      return {
        ...at,
        direction: turned(motion, at.direction),
        until: { ...at.until, value: goal[AXIS_INDEX[at.until.axis]] },
      };
    case 'lined-up':
      return { ...at, x: figure(at.x, 'x'), y: figure(at.y, 'y'), z: figure(at.z, 'z') };
    case 'between':
    case 'crossing':
      return at;
  }
}

const movedEnd = (motion: RigidMotion, end: EndFit): EndFit =>
  end.fit === 'plate' || end.fit === 'foot' ? { ...end, normal: turned(motion, end.normal) } : end;

/** Its turn is given about the fixed axes x, then y, then z. */
function movedBox(motion: RigidMotion, box: BoxEnvelope): BoxEnvelope {
  const [rx, ry, rz] = box.rotation;
  const { axes } = boxFrame(box.centre, box.size, [toRadians(rx), toRadians(ry), toRadians(rz)]);
  const [x, y, z] = axes.map((axis) => turned(motion, axis)) as [Vec3, Vec3, Vec3];
  const pitch = Math.atan2(-x[2], Math.hypot(x[0], x[1]));
  return {
    ...box,
    centre: moved(motion, box.centre),
    rotation: [toDegrees(Math.atan2(y[2], z[2])), toDegrees(pitch), toDegrees(Math.atan2(x[1], x[0]))],
  };
}

/** A coordinate that nobody measured is taken as the tube stands, and is not kept. */
function movedSeat({ byId }: Frame, motion: RigidMotion, tube: TubeRef, seat: Seat): Seat {
  const solved = byId.get(tube);
  if (solved === undefined || seat.point !== undefined) return seat;
  const stands =
    seat.at === 'middle'
      ? placeAt(solved.path, solved.path.length / 2).point
      : solved.ends[seat.at === 'A' ? 0 : 1].position;
  const there = moved(motion, [seat.x ?? stands[0], seat.y ?? stands[1], seat.z ?? stands[2]]);
  return {
    ...seat,
    ...(seat.x !== undefined && { x: there[0] }),
    ...(seat.y !== undefined && { y: there[1] }),
    ...(seat.z !== undefined && { z: there[2] }),
  };
}
