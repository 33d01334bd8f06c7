/** From a drag or a key to the node's new place or value, snapped; pure, so that a gesture only has to preview it. */
import { add, addScaled, dot, type Vec3 } from '../../core/geometry/vector.ts';
import type { Derived } from '../../core/derive.ts';
import type { NodeId } from '../../core/job/reference.ts';
import type { Job } from '../../core/job/types.ts';
import type { LengthUnit } from '../../core/units/length.ts';
import type { Projection } from '../camera/projection.ts';
import type { Freedom } from '../../core/shape/free-directions.ts';
import { displacement, type Grip } from './grips.ts';
import { slideAlong } from './slide.ts';
import { snapValue, stepOf, type Neighbour } from './snap.ts';

export interface Move {
  readonly change: (job: Job) => Job;
  /** What the node came in line with. */
  readonly inLineWith: readonly string[];
}

export interface Drag {
  readonly dx: number;
  readonly dy: number;
  readonly fine: boolean;
}

/** Pixels within which a coordinate is taken over from another node or point. */
const REACH = 4;

/** The coordinates along each axis that are already in use by points, and by nodes other than those that are moved. */
export function neighboursOf({ job, nodes }: Derived, moving: ReadonlySet<NodeId>): readonly (readonly Neighbour[])[] {
  const places: (readonly [string, Vec3])[] = [
    ...job.points.map((point) => [point.name || point.id, point.position] as const),
    ...job.nodes
      .filter(({ id }) => !moving.has(id))
      .flatMap(({ id, name }) => {
        const place = nodes.get(id);
        return place === undefined ? [] : [[name || id, place] as const];
      }),
  ];
  return ([0, 1, 2] as const).map((axis) => places.map(([name, place]) => ({ value: place[axis], name })));
}

export function dragMove(
  freedom: Freedom,
  grip: Grip,
  view: Projection,
  drag: Drag,
  unit: LengthUnit,
  neighbours: readonly (readonly Neighbour[])[],
): Move {
  const step = stepOf(unit, drag.fine);
  if (freedom.free === 'line') return lineMove(freedom, grip, view, drag, step);
  const to = add(freedom.place, displacement(grip, view, drag.dx, drag.dy));
  const inLineWith: string[] = [];
  // Only the coordinates that this grip moves are snapped: the others stay to the last digit.
  const snapped = ([0, 1, 2] as const).map((axis) => {
    if (!grip.along.some((direction) => direction[axis] !== 0)) return freedom.place[axis];
    const reach = drag.fine ? 0 : REACH / view.pixelsPerMm;
    const { value, to: name } = snapValue(to[axis], step, freedom.zero[axis], neighbours[axis] ?? [], reach);
    if (name !== null) inLineWith.push(name);
    return value;
  }) as [number, number, number];
  return { change: (job) => freedom.moved(job, snapped), inLineWith };
}

/** Fractions go by hundredths, fine by thousandths. */
const lineStep = (inMm: boolean, step: number, fine: boolean): number => (inMm ? step : fine ? 0.001 : 0.01);

function lineMove(freedom: Freedom & { free: 'line' }, grip: Grip, view: Projection, drag: Drag, step: number): Move {
  const { host } = freedom;
  const snapTo = (value: number): number => snapValue(value, lineStep(freedom.inMm, step, drag.fine), 0, [], 0).value;
  if (host === null) {
    const mm = dot(displacement(grip, view, drag.dx, drag.dy), freedom.direction);
    const value = snapTo(freedom.value + mm * freedom.perMm);
    return { change: (job) => freedom.moved(job, value), inLineWith: [] };
  }
  const start = view.toScreen(host.placeAt(host.at).point);
  const at = slideAlong(host, view, host.at, start.x + drag.dx, start.y + drag.dy);
  const ends = [-host.at, host.length - host.at].map((along) => freedom.value + along * host.sense);
  const value = snapTo(freedom.value + (at - host.at) * host.sense);
  const kept = Math.min(Math.max(...ends), Math.max(Math.min(...ends), value));
  return { change: (job) => freedom.moved(job, kept), inLineWith: [] };
}

const KEYS: Readonly<Record<string, Vec3>> = {
  ArrowUp: [1, 0, 0],
  ArrowDown: [-1, 0, 0],
  ArrowLeft: [0, 1, 0],
  ArrowRight: [0, -1, 0],
  PageUp: [0, 0, 1],
  PageDown: [0, 0, -1],
};

/**
 * One step for a key: up and down arrow forward and back, left and right arrow to that side of the car, page keys up
 * and down; along a line, the ones that grow and the ones that shrink its value. Null for any other key, and for a way in which the
 * node cannot be moved.
 */
export function nudge(freedom: Freedom, key: string, unit: LengthUnit, fine: boolean): ((job: Job) => Job) | null {
  const direction = KEYS[key];
  if (direction === undefined) return null;
  const step = stepOf(unit, fine);
  if (freedom.free === 'space') {
    if (!freedom.open.some((axis) => direction[axis] !== 0)) return null;
    const to = addScaled(freedom.place, direction, step);
    return (job) => freedom.moved(job, to);
  }
  const grows = key === 'ArrowUp' || key === 'ArrowRight' || key === 'PageUp';
  const value = freedom.value + (grows ? 1 : -1) * lineStep(freedom.inMm, step, fine);
  return (job) => freedom.moved(job, value);
}
