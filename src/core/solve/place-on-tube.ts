/**
 * Where a node on a tube stands, on the real centreline, arcs included: so far along, where the tube has a coordinate, or where a line
 * crosses it or passes nearest.
 */
import { nearestToLine, runsAlong } from '../geometry/nearest-to-line.ts';
import { placeAt } from '../geometry/path.ts';
import { placesInPlane } from '../geometry/plane-places.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import { AXIS_INDEX, add, length, normalize, subtract } from '../geometry/vector.ts';
import { figure, quoted } from '../job/fault.ts';
import type { CrossingPlace } from '../job/places/crossing.ts';
import type { OnMember } from '../job/places/on.ts';
import { coordinateOf, type Placing, type Solved } from './solved.ts';

/** The place on the tube, moved off the axis by the offset; or what there is none for. */
export function placeOnTube(at: OnMember, solved: Solved): Placing {
  return at.until === undefined ? alongTube(at, solved) : untilCoordinate(at, solved);
}

function alongTube(at: Extract<OnMember, { readonly distance: number }>, solved: Solved): Placing {
  const { path, bends, developedLength } = solved.tube(at.member);
  let along: number;
  if (at.bend === undefined) {
    along = at.from === 'start' ? at.distance : developedLength - at.distance;
  } else {
    const bend = bends[at.bend - 1];
    if (bend === undefined) {
      const count = bends.length === 1 ? '1 bend' : `${bends.length} bends`;
      return { trouble: `${quoted(at.member)} has ${count}: there is no bend ${at.bend}`, field: '.bend' };
    }
    along = { start: bend.start, middle: (bend.start + bend.end) / 2, end: bend.end }[at.where] + at.distance;
  }
  if (along < -ROUNDING || along > developedLength + ROUNDING) {
    const beyond = `${figure(along)} mm along lies beyond the ends of ${quoted(at.member)}`;
    return { trouble: `${beyond}, which is ${figure(developedLength)} mm long`, field: '.distance' };
  }
  return { position: add(placeAt(path, along).point, at.offset) };
}

function untilCoordinate(at: Exclude<OnMember, { readonly distance: number }>, solved: Solved): Placing {
  const { axis } = at.until;
  const value = coordinateOf(at.until, axis, solved);
  const places = placesInPlane(solved.tube(at.member).path, AXIS_INDEX[axis], value);
  const place = places[at.nth - 1];
  if (place !== undefined) return { position: add(place.point, at.offset) };
  const reached = `${quoted(at.member)} ${places.length === 0 ? 'never' : 'only'} comes to ${axis} = ${figure(value)}`;
  if (places.length === 0) return { trouble: reached, field: '.until' };
  const times = places.length === 1 ? 'once' : places.length === 2 ? 'twice' : `${places.length} times`;
  return { trouble: `${reached} ${times}: there is no place ${at.nth}`, field: '.nth' };
}

/** The tube's place nearest the endless line through both nodes; or why there is no such line, or no nearest place. */
export function placeAtCrossing(at: CrossingPlace, solved: Solved): Placing {
  const { path } = solved.tube(at.member);
  const [from, to] = [solved.node(at.line[0]), solved.node(at.line[1])];
  const along = subtract(to, from);
  if (length(along) <= ROUNDING) {
    const [first, second] = at.line.map(quoted);
    return { trouble: `${first} and ${second} stand at the same place: no line runs through them`, field: '.line' };
  }
  const direction = normalize(along);
  if (runsAlong(path, direction)) {
    return {
      trouble: `the line runs along ${quoted(at.member)}: no place of it is nearer than another`,
      field: '.line',
    };
  }
  return { position: nearestToLine(path, from, direction).point };
}
