/**
 * A node's place given another way without moving it: from the nearest measured point, on the nearest tube, along a
 * line, between two nodes, in line with others, or as plain numbers. What itself depends on the node is left out, since the references would
 * form a loop; so there may be nothing to give the place from.
 */
import { setPlace } from '../edit/nodes.ts';
import type { Edited } from '../edit/records.ts';
import { dependentNodes } from '../edit/references.ts';
import { addScaled, distance, dot, mirrored, scale, subtract, type Vec3 } from '../geometry/vector.ts';
import type { Place } from '../job/places.ts';
import type { Coordinate } from '../job/places/coordinate.ts';
import { bareId, type NodeId } from '../job/reference.ts';
import { thickestThrough } from '../job/thickest.ts';
import type { Job } from '../job/types.ts';
import type { Frame } from '../solve/types.ts';
import { AXES, freeNodes, longestAxis, nearestOf, ON_THE_LINE, pairsOf } from './candidates.ts';
import { atCrossing, onTube, untilOnTube } from './given-on-tube.ts';
import type { Way } from './ways.ts';

const NOTHING_TO_START_FROM: Readonly<Record<Way, string>> = {
  fixed: 'it has no place',
  point: 'no point has been measured',
  clear: 'no point has been measured',
  on: 'every tube hangs on this node itself',
  until: 'every tube hangs on this node itself',
  crossing: 'no line through two other nodes crosses a tube there',
  between: 'no two nodes have it between them on one line',
  ray: 'there is no other node to start from',
  'lined-up': 'it has no place',
};

/** The job with the node's place given in that way, where it is in the solved frame; refused, in words, where nothing is there to give it from. */
export function giveAs(job: Job, frame: Frame, id: NodeId, way: Way): Edited {
  const place = givenAs(frame, id, way);
  return place === null ? [{ place: '', message: NOTHING_TO_START_FROM[way] }] : setPlace(job, id, place);
}

/**
 * The node's place in the frame given in that way: it comes out within 0.01 mm of where it is, and keeps nothing of how it was given
 * but the tube that it was on. Of points, tubes and nodes the nearest is taken, of pairs of nodes the one that is closest together.
 *
 * @returns null where the frame does not hold the node, or has nothing to give its place from
 */
export function givenAs(frame: Frame, id: NodeId, way: Way): Place | null {
  const here = frame.nodes.get(id);
  if (here === undefined) return null;
  switch (way) {
    case 'fixed':
      return { kind: way, position: here };
    case 'point':
      return fromPoint(frame, here);
    case 'clear':
      return clearOfPoint(frame, id, here);
    case 'on':
      return onTube(frame, id, here);
    case 'until':
      return untilOnTube(frame, id, here);
    case 'between':
      return betweenNodes(frame, id, here);
    case 'ray':
      return alongRay(frame, id, here);
    case 'lined-up':
      return inLine(frame, id, here);
    case 'crossing':
      return atCrossing(frame, id, here);
  }
}

function fromPoint(frame: Frame, here: Vec3): Place | null {
  const nearest = nearestPoint(frame, here);
  return nearest && { kind: 'point', point: nearest.point, offset: subtract(here, nearest.position) };
}

function nearestPoint({ job }: Frame, here: Vec3) {
  const candidates = job.points.flatMap(({ id, position }) => [
    { point: id, position },
    { point: `${id}'`, position: mirrored(position) },
  ]);
  return nearestOf(candidates, ({ position }) => distance(position, here));
}

/** The gap is taken along the axis of the car on which the node stands farthest off, for trim is measured square; the rest is offset. */
function clearOfPoint(frame: Frame, id: NodeId, here: Vec3): Place | null {
  const nearest = nearestPoint(frame, here);
  if (nearest === null) return null;
  const away = subtract(here, nearest.position);
  const axis = longestAxis(away);
  const direction = alongAxis(axis, away[axis] < 0 ? -1 : 1);
  const radius = thickestThrough(frame.job, id) / 2;
  const gap = Math.max(0, Math.abs(away[axis]) - radius);
  const offset = subtract(away, scale(direction, gap + radius));
  return { kind: 'point', point: nearest.point, offset, clear: { direction, gap } };
}

/** Each coordinate that another node has too is taken from the nearest that has it; the others are numbers. */
function inLine(frame: Frame, id: NodeId, here: Vec3): Place {
  const dependents = dependentNodes(frame.job, id);
  const others = [...frame.nodes].filter(([reference]) => !dependents.has(bareId(reference)));
  const given = (axis: 0 | 1 | 2): Coordinate => {
    const inLineWith = others.filter(([, at]) => Math.abs(at[axis] - here[axis]) < ON_THE_LINE);
    const nearest = nearestOf(inLineWith, ([, at]) => distance(at, here));
    return nearest === null ? { value: here[axis] } : { node: nearest[0], plus: 0 };
  };
  return { kind: 'lined-up', x: given(0), y: given(1), z: given(2) };
}

function alongRay(frame: Frame, id: NodeId, here: Vec3): Place | null {
  const nearest = nearestOf(freeNodes(frame, id), ({ at }) => distance(at, here));
  if (nearest === null) return null;
  const direction = subtract(here, nearest.at);
  const axis = longestAxis(direction);
  return { kind: 'ray', from: nearest.reference, direction, until: { axis: AXES[axis]!, value: here[axis] } };
}

/** Of all pairs that have the place between them, the closest together: the joint's own neighbours. */
function betweenNodes(frame: Frame, id: NodeId, here: Vec3): Place | null {
  let best: { span: number; place: Place } | null = null;
  for (const { first, second } of pairsOf(freeNodes(frame, id))) {
    const along = subtract(second.at, first.at);
    const span = dot(along, along);
    if (span === 0 || (best !== null && span >= best.span)) continue;
    const fraction = dot(subtract(here, first.at), along) / span;
    if (fraction <= 0 || fraction >= 1 || distance(addScaled(first.at, along, fraction), here) > ON_THE_LINE) continue;
    best = { span, place: { kind: 'between', nodes: [first.reference, second.reference], fraction } };
  }
  return best?.place ?? null;
}

/** Without a negative zero: a file has none. */
const alongAxis = (axis: 0 | 1 | 2, sense: 1 | -1): Vec3 => [
  axis === 0 ? sense : 0,
  axis === 1 ? sense : 0,
  axis === 2 ? sense : 0,
];
