/** Places given another way, and the place that a new node of each kind starts from. */
import { nearestToLine, runsAlong } from '../../core/geometry/nearest-to-line.ts';
import { placesInPlane } from '../../core/geometry/plane-places.ts';
import { AXIS_INDEX, distance, normalize, subtract, type Axis, type Vec3 } from '../../core/geometry/vector.ts';
import type { Place } from '../../core/job/places.ts';
import type { Coordinate } from '../../core/job/places/coordinate.ts';
import { comesTo, untilHere, type Way } from '../../core/shape/ways.ts';

import type { Bar, Frame } from '../../core/solve/types.ts';
import type { Selection } from '../../store/types.ts';
import type { AlongTube, UntilOnTube } from './choices.ts';

/** The same node on its tube, measured from another origin: "start", "end", or "2 middle"; the distance stays the number it was. */
export function withOrigin(at: AlongTube, origin: string): AlongTube {
  const { kind, member, distance: along, offset } = at;
  if (origin === 'start' || origin === 'end') return { kind, member, from: origin, distance: along, offset };
  const [bend, where] = origin.split(' ');
  return { kind, member, bend: Number(bend), where: where as 'start' | 'middle' | 'end', distance: along, offset };
}

/** What a coordinate is taken from, as one choice: "" for a number of its own, "node top" or "point sill'". */
export function sourceOf({ node, point }: Coordinate): string {
  if (node !== undefined) return `node ${node}`;
  return point === undefined ? '' : `point ${point}`;
}

/** The coordinate taken from something else: level with it, unless it stood off another by so much. As a number it stays at `now`, mm. */
export function withSource<C extends Coordinate>(given: C, source: string, now: number): C {
  const { value: _value, node: _node, point: _point, plus = 0, ...others } = given;
  if (source === '') return { ...others, value: now } as unknown as C;
  const gap = source.indexOf(' ');
  return { ...others, [source.slice(0, gap)]: source.slice(gap + 1), plus } as unknown as C;
}

/** The number in it, mm. */
export const amountOf = (given: Coordinate): number => given.value ?? given.plus;

export const withAmount = <C extends Coordinate>(given: C, mm: number): C =>
  given.value === undefined ? { ...given, plus: mm } : { ...given, value: mm };

/** The same place on its tube, by another coordinate that the tube has there. */
export function byOtherAxis(frame: Frame, at: UntilOnTube, axis: Axis): Place {
  const { path } = frame.bars.get(at.member)!;
  const value = comesTo(frame, at.until, at.until.axis);
  const here = placesInPlane(path, AXIS_INDEX[at.until.axis], value)[at.nth - 1];
  if (here === undefined) return at;
  const other = untilHere(path, axis, here.at);
  return { ...at, until: { axis, value: other.value }, nth: other.nth };
}

/** Where a new node of this kind starts: by what is selected where that serves, else by the first there is; null when there is none. */
export function startingPlace(frame: Frame, way: Way, selection: Selection | null, at: Vec3): Place | null {
  const { nodes, points } = frame.job;
  const [first, second] = nodes;
  const point = selection?.kind === 'point' ? selection.id : points[0]?.id;
  const node = selection?.kind === 'node' ? selection.id : first?.id;
  const chosen = selection?.kind === 'tube' ? (frame.byId.get(selection.id)?.bar ?? selection.id) : '';
  const tube = frame.bars.get(chosen) ?? [...frame.bars.values()][0];
  switch (way) {
    case 'fixed':
      return { kind: way, position: at };
    case 'point':
      return point === undefined ? null : { kind: way, point, offset: [0, 0, 0] };
    case 'clear': {
      // Trim is beside the tube: the gap goes in towards the middle of the car.
      const left = (points.find(({ id }) => id === point)?.position[1] ?? 0) >= 0;
      const clear = { direction: [0, left ? -1 : 1, 0] as const, gap: START_GAP };
      return point === undefined ? null : { kind: 'point', point, offset: [0, 0, 0], clear };
    }
    case 'on':
      return tube === undefined
        ? null
        : { kind: way, member: tube.id, from: 'start', distance: 100, offset: [0, 0, 0] };
    case 'until': {
      if (tube === undefined) return null;
      const { value, nth } = untilHere(tube.path, 'z', tube.developedLength / 2);
      return { kind: 'on', member: tube.id, until: { axis: 'z', value }, nth, offset: [0, 0, 0] };
    }
    case 'crossing': {
      const line = tube && lineAcross(frame, tube);
      return line ? { kind: way, member: tube.id, line } : null;
    }
    case 'between':
      return first && second ? { kind: way, nodes: [first.id, second.id], fraction: 0.5 } : null;
    case 'ray':
      return node === undefined
        ? null
        : { kind: way, from: node, direction: [0, 0, -1], until: { axis: 'z', value: 0 } };
    case 'lined-up':
      return node === undefined ? null : { kind: way, x: { value: at[0] }, y: { value: at[1] }, z: { node, plus: 0 } };
  }
}

/** mm. Room for a torch. */
const START_GAP = 25;

/** Of the lines between two nodes the one that comes nearest the tube, of those that its own nodes are not on; null where there is none. */
function lineAcross({ job, nodes }: Frame, tube: Bar): readonly [string, string] | null {
  const own = new Set(tube.member.path);
  const others = job.nodes.filter(({ id }) => !own.has(id) && !own.has(`${id}'`)).slice(0, MOST_TRIED);
  let best: { readonly line: readonly [string, string]; readonly away: number } | null = null;
  for (const [i, { id: from }] of others.entries()) {
    for (const { id: to } of others.slice(i + 1)) {
      const [a, b] = [nodes.get(from)!, nodes.get(to)!];
      if (distance(a, b) < 1) continue;
      const direction = normalize(subtract(b, a));
      if (runsAlong(tube.path, direction)) continue;
      const { distance: away } = nearestToLine(tube.path, a, direction);
      if (best === null || away < best.away) best = { line: [from, to], away };
    }
  }
  return best?.line ?? null;
}

/** A new node needs a line to start from, not the best there is in a big frame. */
const MOST_TRIED = 12;
