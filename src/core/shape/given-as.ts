/**
 * A node's place given another way without moving it: from the nearest measured point, on the nearest tube, along a
 * line, between two nodes, or as plain numbers. What itself depends on the node is left out, since the references would
 * form a loop; so there may be nothing to give the place from.
 */
import { setPlace } from '../edit/nodes.ts';
import type { Edited } from '../edit/records.ts';
import { dependentNodes } from '../edit/references.ts';
import { nearestOnPath } from '../geometry/path.ts';
import { distance, dot, mirrored, subtract, type Vec3, type Axis } from '../geometry/vector.ts';
import type { Place } from '../job/places.ts';
import { bareId, type NodeId, type NodeRef } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import type { Frame } from '../solve/types.ts';

/** Two nodes have a third between them when it lies this near their line, mm: below what a tape reads. */
const ON_THE_LINE = 0.01;

const AXES: readonly Axis[] = ['x', 'y', 'z'];

/** A node that lies no further than this from another is in its place, mm: a line from there would have no direction to trust. */
const SAME_PLACE = 1;

const NOTHING_TO_START_FROM: Readonly<Record<Place['kind'], string>> = {
  fixed: 'it has no place',
  point: 'no point has been measured',
  on: 'every tube hangs on this node itself',
  between: 'no two nodes have it between them on one line',
  ray: 'there is no other node to start from',
};

/** The job with the node's place given as `kind`, where it is in the solved frame; refused, in words, where nothing is there to give it from. */
export function giveAs(job: Job, frame: Frame, id: NodeId, kind: Place['kind']): Edited {
  const place = givenAs(frame, id, kind);
  return place === null ? [{ place: '', message: NOTHING_TO_START_FROM[kind] }] : setPlace(job, id, place);
}

/**
 * The node's place in the frame given as `kind`: it comes out within 0.01 mm of where it is. Of points, tubes and nodes the
 * nearest is taken, of pairs of nodes the one that is closest together.
 *
 * @returns null where the frame does not hold the node, or has nothing to give its place from
 */
export function givenAs(frame: Frame, id: NodeId, kind: Place['kind']): Place | null {
  const here = frame.nodes.get(id);
  if (here === undefined) return null;
  switch (kind) {
    case 'fixed':
      return { kind, position: here };
    case 'point':
      return fromPoint(frame, here);
    case 'on':
      return onTube(frame, id, here);
    case 'between':
      return betweenNodes(frame, id, here);
    case 'ray':
      return alongRay(frame, id, here);
  }
}

function fromPoint({ job }: Frame, here: Vec3): Place | null {
  const candidates = job.points.flatMap(({ id, position }) => [
    { point: id, position },
    { point: `${id}'`, position: mirrored(position) },
  ]);
  const nearest = nearestOf(candidates, ({ position }) => distance(position, here));
  return nearest && { kind: 'point', point: nearest.point, offset: subtract(here, nearest.position) };
}

function onTube(frame: Frame, id: NodeId, here: Vec3): Place | null {
  const dependents = dependentNodes(frame.job, id);
  const free = frame.tubes.filter((tube) => !tube.member.path.some((reference) => dependents.has(bareId(reference))));
  const places = free.map((tube) => ({ tube, place: nearestOnPath(tube.path, here) }));
  const nearest = nearestOf(places, ({ place }) => place.distance);
  if (nearest === null) return null;
  const { tube, place } = nearest;
  // A joint that is on the axis stays on it, without an offset of rounding.
  const offset = place.distance < ON_THE_LINE ? ([0, 0, 0] as const) : subtract(here, place.point);
  return { kind: 'on', member: tube.id, from: 'start', distance: place.at, offset };
}

function alongRay(frame: Frame, id: NodeId, here: Vec3): Place | null {
  const nearest = nearestOf(freeNodes(frame, id), ({ at }) => distance(at, here));
  if (nearest === null) return null;
  const direction = subtract(here, nearest.at);
  const sizes = direction.map(Math.abs);
  const axis = sizes.indexOf(Math.max(...sizes));
  return {
    kind: 'ray',
    from: nearest.reference,
    direction,
    until: { axis: AXES[axis] ?? 'z', value: here[axis] ?? 0 },
  };
}

/** Of all pairs that have the place between them, the closest together: the joint's own neighbours. */
function betweenNodes(frame: Frame, id: NodeId, here: Vec3): Place | null {
  const nodes = freeNodes(frame, id);
  let best: { span: number; place: Place } | null = null;
  for (const [index, first] of nodes.entries()) {
    for (const second of nodes.slice(index + 1)) {
      const along = subtract(second.at, first.at);
      const span = dot(along, along);
      if (span === 0 || (best !== null && span >= best.span)) continue;
      const fraction = dot(subtract(here, first.at), along) / span;
      const onLine = first.at.map((start, axis) => start + fraction * (along[axis] ?? 0)) as unknown as Vec3;
      if (fraction <= 0 || fraction >= 1 || distance(onLine, here) > ON_THE_LINE) continue;
      best = { span, place: { kind: 'between', nodes: [first.reference, second.reference], fraction } };
    }
  }
  return best?.place ?? null;
}

/** Nodes and mirror images that do not move with this one, and do not stand in its place. */
function freeNodes({ job, nodes }: Frame, id: NodeId): { reference: NodeRef; at: Vec3 }[] {
  const dependents = dependentNodes(job, id);
  const here = nodes.get(id);
  return [...nodes]
    .filter(
      ([reference, at]) => !dependents.has(bareId(reference)) && here !== undefined && distance(at, here) > SAME_PLACE,
    )
    .map(([reference, at]) => ({ reference, at }));
}

function nearestOf<T>(candidates: readonly T[], far: (candidate: T) => number): T | null {
  let nearest: T | null = null;
  let least = Infinity;
  for (const candidate of candidates) {
    const distant = far(candidate);
    if (distant < least) [nearest, least] = [candidate, distant];
  }
  return nearest;
}
