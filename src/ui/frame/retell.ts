/**
 * Tells a node's place another way without moving it: from the nearest measured point, on the nearest tube, along a
 * line, between two nodes, or as plain numbers. Whatever itself depends on the node is no candidate, or the references
 * would form a loop.
 */
import { dependentNodes } from '../../core/edit/references.ts';
import { nearestOnPath } from '../../core/geometry/path.ts';
import { distance, dot, mirrored, subtract, type Vec3, type Axis } from '../../core/geometry/vector.ts';
import { bareId, type NodeId, type NodeRef } from '../../core/job/reference.ts';
import type { Place } from '../../core/job/places.ts';
import type { Frame } from '../../core/solve/types.ts';

/** Two nodes have a third between them when it lies this near their line, mm: below what a tape reads. */
const ON_THE_LINE = 0.01;

const AXES: readonly Axis[] = ['x', 'y', 'z'];

/** The same place given as `kind`; null where the frame has nothing to measure it from. */
export function retell(frame: Frame, id: NodeId, kind: Place['kind']): Place | null {
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
    .filter(([reference, at]) => !dependents.has(bareId(reference)) && here !== undefined && distance(at, here) > 1)
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
