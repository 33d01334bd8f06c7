/**
 * A node's place given on a tube, where it is: so far along, by a coordinate that the tube has there, or by a line that crosses it
 * there. Null where every tube hangs on the node, or no line does.
 */
import { dependentNodes } from '../edit/references.ts';
import { nearestToLine, runsAlong } from '../geometry/nearest-to-line.ts';
import { nearestOnPath, type NearestPlace } from '../geometry/path.ts';
import { dot, length, rejectFrom, scale, subtract, type Vec3 } from '../geometry/vector.ts';
import { hostOf, type Place } from '../job/places.ts';
import { bareId, type NodeId, type NodeRef } from '../job/reference.ts';
import type { Bar, Frame } from '../solve/types.ts';
import { AXES, freeNodes, longestAxis, nearestOf, ON_THE_LINE, pairsOf, SAME_PLACE } from './candidates.ts';
import { untilHere } from './ways.ts';

/** A tube that rises less than this a mm is nearly level: a place on it is not given by its height. */
const LEAST_RISE = 0.2;

/** So far along the tube from end A; an offset takes what it is beside the centreline. */
export function onTube(frame: Frame, id: NodeId, here: Vec3): Place | null {
  const nearest = nearestTube(frame, id, here);
  if (nearest === null) return null;
  const { tube, place } = nearest;
  return { kind: 'on', member: tube.id, from: 'start', distance: place.at, offset: offTheAxis(place, here) };
}

/** By its height; where the tube is nearly level there, by the coordinate that changes most along it. */
export function untilOnTube(frame: Frame, id: NodeId, here: Vec3): Place | null {
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

/** The tube whose centreline runs through the place, and the closest pair of nodes whose line does. */
export function atCrossing(frame: Frame, id: NodeId, here: Vec3): Place | null {
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
