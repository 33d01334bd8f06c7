/**
 * A node's place given another way without moving it: from the nearest measured point, on the nearest tube, along a
 * line, between two nodes, in line with others, or as plain numbers. What itself depends on the node is left out, since the references would
 * form a loop; so there may be nothing to give the place from.
 */
import { setPlace } from '../edit/nodes.ts';
import type { Edited } from '../edit/records.ts';
import { dependentNodes } from '../edit/references.ts';
import { nearestToLine, runsAlong } from '../geometry/nearest-to-line.ts';
import { nearestOnPath, type NearestPlace } from '../geometry/path.ts';
import {
  addScaled,
  distance,
  dot,
  length,
  mirrored,
  rejectFrom,
  scale,
  subtract,
  type Axis,
  type Vec3,
} from '../geometry/vector.ts';
import { hostOf, type Place } from '../job/places.ts';
import type { Coordinate } from '../job/places/coordinate.ts';
import { bareId, type NodeId, type NodeRef } from '../job/reference.ts';
import { thickestThrough } from '../job/thickest.ts';
import type { Job } from '../job/types.ts';
import type { Bar, Frame } from '../solve/types.ts';
import { untilHere, type Way } from './ways.ts';

/** Two nodes have a third between them when it lies this near their line, mm: below what a tape reads. */
const ON_THE_LINE = 0.01;

const AXES: readonly Axis[] = ['x', 'y', 'z'];

/** A tube that rises less than this a mm is nearly level: a place on it is not given by its height. */
const LEAST_RISE = 0.2;

/** A node that lies no further than this from another is in its place, mm: a line from there would have no direction to trust. */
const SAME_PLACE = 1;

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

function onTube(frame: Frame, id: NodeId, here: Vec3): Place | null {
  const nearest = nearestTube(frame, id, here);
  if (nearest === null) return null;
  const { tube, place } = nearest;
  return { kind: 'on', member: tube.id, from: 'start', distance: place.at, offset: offTheAxis(place, here) };
}

/** By its height; where the tube is nearly level there, by the coordinate that changes most along it. */
function untilOnTube(frame: Frame, id: NodeId, here: Vec3): Place | null {
  const nearest = nearestTube(frame, id, here);
  if (nearest === null) return null;
  const { tube, place } = nearest;
  const axis = Math.abs(place.tangent[2]) >= LEAST_RISE ? 'z' : AXES[longestAxis(place.tangent)]!;
  const { value, nth } = untilHere(tube.path, axis, place.at);
  return { kind: 'on', member: tube.id, until: { axis, value }, nth, offset: offTheAxis(place, here) };
}

/** A joint that is on the axis stays on it, without an offset of rounding. */
const offTheAxis = (place: NearestPlace, here: Vec3): Vec3 =>
  place.distance < ON_THE_LINE ? [0, 0, 0] : subtract(here, place.point);

/** Of the tubes that do not hang on the node, the one that it is on already, else the nearest. */
function nearestTube(frame: Frame, id: NodeId, here: Vec3) {
  const host = hostOf(frame.job.nodes.find((node) => node.id === id)!.at);
  const free = freeTubes(frame, id).filter((tube, _, all) => tube.id === host || !all.some((each) => each.id === host));
  const places = free.map((tube) => ({ tube, place: nearestOnPath(tube.path, here) }));
  return nearestOf(places, ({ place }) => place.distance);
}

function freeTubes(frame: Frame, id: NodeId): readonly Bar[] {
  const dependents = dependentNodes(frame.job, id);
  return [...frame.bars.values()].filter(
    (tube) => !tube.member.path.some((reference) => dependents.has(bareId(reference))),
  );
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

/** The tube whose centreline runs through the place, and the closest pair of nodes whose line does. */
function atCrossing(frame: Frame, id: NodeId, here: Vec3): Place | null {
  const nearest = nearestTube(frame, id, here);
  if (nearest === null || nearest.place.distance >= ON_THE_LINE) return null;
  const { tube, place } = nearest;
  const inTheTube = place.at > 0 && place.at < tube.developedLength;
  let best: { span: number; line: readonly [NodeRef, NodeRef] } | null = null;
  for (const { first, second } of pairsOf(freeNodes(frame, id))) {
    const along = subtract(second.at, first.at);
    const span = length(along);
    if (span < SAME_PLACE || (best !== null && span >= best.span)) continue;
    const direction = scale(along, 1 / span);
    // Short of an end the distance from the line stands still at the nearest place: most lines are told by that alone.
    const away = rejectFrom(subtract(here, first.at), direction);
    if (inTheTube && Math.abs(dot(away, place.tangent)) > ON_THE_LINE * (1 + length(away))) continue;
    if (runsAlong(tube.path, direction)) continue;
    if (Math.abs(nearestToLine(tube.path, first.at, direction).at - place.at) >= ON_THE_LINE) continue;
    best = { span, line: [first.reference, second.reference] };
  }
  return best && { kind: 'crossing', member: tube.id, line: best.line };
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

function* pairsOf<T>(nodes: readonly T[]): Generator<{ readonly first: T; readonly second: T }> {
  for (const [index, first] of nodes.entries()) {
    for (const second of nodes.slice(index + 1)) yield { first, second };
  }
}

/** Without a negative zero: a file has none. */
const alongAxis = (axis: 0 | 1 | 2, sense: 1 | -1): Vec3 => [
  axis === 0 ? sense : 0,
  axis === 1 ? sense : 0,
  axis === 2 ? sense : 0,
];

/** The axis along which it goes farthest; the first of equal ones. */
function longestAxis(along: Vec3): 0 | 1 | 2 {
  const sizes = along.map(Math.abs);
  return sizes.indexOf(Math.max(...sizes)) as 0 | 1 | 2;
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
