/**
 * Tells the place of a node in another way. A fixed place, an offset from the nearest measured point, a distance along
 * the nearest tube (with an offset off its axis) and a ray from the nearest node say exactly where the node stands
 * now; "between two nodes" can only be had on their line, so there the node moves onto it.
 *
 * Only what does not itself stand on the node is chosen to stand on: references form no loop.
 */
import { nearestOnPath, type Path } from '../geometry/path.ts';
import { distance, dot, interpolate, subtract, type Vec3 } from '../geometry/vector.ts';
import { bareId, primed } from '../job/reference.ts';
import type { Axis, Job, NodeId, NodeRef, Place, TubeRef } from '../job/types.ts';
import { pointPosition, setPlace } from './nodes.ts';
import { findRecord } from './records.ts';
import { dependentNodes } from './references.ts';

/** Where nodes and tubes stand, of a solved job. */
export interface Standing {
  readonly nodes: ReadonlyMap<NodeRef, Vec3>;
  readonly tubes: readonly { readonly id: TubeRef; readonly path: Path }[];
}

/** The job with the node's place told as `kind`; the same job when it is so told, or when there is nothing to stand on. */
export function changeKind(job: Job, standing: Standing, id: NodeId, kind: Place['kind']): Job {
  const position = standing.nodes.get(id);
  if (!position || findRecord(job, 'nodes', id)?.at.kind === kind) return job;
  const place = placeOfKind(job, standing, id, kind, position);
  return place ? setPlace(job, id, place) : job;
}

function placeOfKind(job: Job, standing: Standing, id: NodeId, kind: Place['kind'], position: Vec3): Place | null {
  switch (kind) {
    case 'fixed':
      return { kind, position };
    case 'point':
      return onNearestPoint(job, position);
    case 'on':
      return onNearestTube(job, standing, id, position);
    case 'between':
      return betweenNodes(job, standing, id, position);
    case 'ray':
      return rayFromNearest(job, standing, id, position);
  }
}

function onNearestPoint(job: Job, position: Vec3): Place | null {
  const refs = job.points.flatMap(({ id }) => [id, primed(id)]);
  const point = nearest(refs, (ref) => distance(pointPosition(job, ref)!, position));
  return point === null ? null : { kind: 'point', point, offset: subtract(position, pointPosition(job, point)!) };
}

function onNearestTube(job: Job, { tubes }: Standing, id: NodeId, position: Vec3): Place | null {
  const moving = dependentNodes(job, id);
  const stands = new Map(
    job.members.map((member) => [member.id, member.path.every((ref) => !moving.has(bareId(ref)))]),
  );
  const free = tubes.filter((tube) => stands.get(bareId(tube.id)));
  const tube = nearest(free, ({ path }) => nearestOnPath(path, position).distance);
  if (!tube) return null;
  const { at, point } = nearestOnPath(tube.path, position);
  return { kind: 'on', member: tube.id, from: 'start', distance: at, offset: subtract(position, point) };
}

function betweenNodes(job: Job, standing: Standing, id: NodeId, position: Vec3): Place | null {
  const others = standingNodes(job, standing, id, position);
  const [first] = others;
  if (!first) return null;
  const onLine = ([, to]: readonly [NodeRef, Vec3]): number => {
    const along = subtract(to, first[1]);
    return dot(subtract(position, first[1]), along) / dot(along, along);
  };
  const apart = others.filter(([, to]) => distance(to, first[1]) > 1);
  const second = nearest(apart, (other) => distance(interpolate(first[1], other[1], onLine(other)), position));
  return second && { kind: 'between', nodes: [first[0], second[0]], fraction: onLine(second) };
}

function rayFromNearest(job: Job, standing: Standing, id: NodeId, position: Vec3): Place | null {
  const from = standingNodes(job, standing, id, position).find(([, at]) => distance(at, position) > 1);
  if (!from) return null;
  const direction = subtract(position, from[1]);
  const longest = [0, 1, 2].reduce((best, axis) =>
    Math.abs(direction[axis]!) > Math.abs(direction[best]!) ? axis : best,
  );
  const axis = (['x', 'y', 'z'] as const satisfies readonly Axis[])[longest]!;
  return { kind: 'ray', from: from[0], direction, until: { axis, value: position[longest]! } };
}

/** Nodes, and images of nodes, that do not move with this one; the nearest first. */
function standingNodes(
  job: Job,
  { nodes }: Standing,
  id: NodeId,
  position: Vec3,
): readonly (readonly [NodeRef, Vec3])[] {
  const moving = dependentNodes(job, id);
  return [...nodes]
    .filter(([ref]) => !moving.has(bareId(ref)))
    .toSorted(([, a], [, b]) => distance(a, position) - distance(b, position));
}

/** The item of least measure, the first of equals; null of none. */
function nearest<T>(items: readonly T[], measure: (item: T) => number): T | null {
  const measured = items.map((item) => [item, measure(item)] as const);
  return (
    measured.reduce<readonly [T, number] | null>(
      (best, each) => (best && best[1] <= each[1] ? best : each),
      null,
    )?.[0] ?? null
  );
}
