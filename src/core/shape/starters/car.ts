/**
 * The places of the car that a cage goes by: measured points where there are some, new points at the tape figures where not. Where both
 * sides of a place are measured the cage goes by their mean. All on the left; heights over the floor at the hoop, lengths from its station.
 */
import { addNode } from '../../edit/nodes.ts';
import { appendRecord, findRecord } from '../../edit/records.ts';
import { nextId } from '../../edit/ids.ts';
import { mirrored, interpolate, type Vec3 } from '../../geometry/vector.ts';
import { pointInPair } from '../../survey/in-pair.ts';
import { placeOfPoint } from '../../survey/measured-points.ts';
import type { Place } from '../../job/places.ts';
import type { Coordinate } from '../../job/places/coordinate.ts';
import { bareId, primed, type NodeId, type PointRef } from '../../job/reference.ts';
import type { Job } from '../../job/types.ts';
import { FIGURE_NAMES, FIGURES, type Asked } from './asked.ts';
import { spotsOf, type Spot } from '../../survey/spots.ts';

/** A place of the car, and what a node says that goes by it. */
export interface Spotted {
  readonly at: Vec3;
  readonly by: { readonly point: PointRef } | { readonly node: NodeId };
}

export type Car = Readonly<Partial<Record<Spot, Spotted>>>;

const NAMES: Readonly<Record<Spot, string>> = {
  'floor-b': 'Floor at the hoop, left',
  'belt-b': 'B-pillar at the belt line, left',
  'roof-b': 'Roof rail at the B-pillar, left',
  tower: 'Rear spring tower, left',
  'screen-top': 'Windscreen, top corner, left',
  'screen-foot': 'Windscreen, lower corner, left',
  'floor-a': 'Floor at the front foot, left',
};

/** The job with the points that its car still lacks, and where each place of the layout is. */
export function withCar(job: Job, asked: Asked): { readonly job: Job; readonly car: Car } {
  let grown = job;
  const car: Partial<Record<Spot, Spotted>> = {};
  // The floor first: heights are over it, and lengths from the hoop's station.
  const floor = asked.points['floor-b'];
  const roof = asked.points['roof-b'];
  const station = roof === undefined ? (floor === undefined ? 0 : placeOf(job, floor)[0]) : placeOf(job, roof)[0];
  const level = floor === undefined ? 0 : placeOf(job, floor)[2];
  for (const spot of spotsOf(asked.layout)) {
    const measured = asked.points[spot];
    if (measured === undefined) {
      grown = appendRecord(grown, 'points', {
        id: freeId(grown, spot),
        name: NAMES[spot],
        ...atFigures(asked, spot, station, level),
      });
      const point = grown.points.at(-1)!;
      car[spot] = { at: point.position, by: { point: point.id } };
    } else {
      [grown, car[spot]] = measuredAt(grown, measured);
    }
  }
  return { job: grown, car };
}

/** Where it is on the left: a point on the right is seen in the mirror. */
function placeOf(job: Job, ref: PointRef): Vec3 {
  const position = placeOfPoint(job, bareId(ref))!;
  return position[1] < 0 ? mirrored(position) : position;
}

const freeId = (job: Job, wanted: string): string =>
  findRecord(job, 'points', wanted) === undefined ? wanted : nextId(job, 'points');

/** Of the place's figures those that nobody has said make the point a guess. */
function atFigures(asked: Asked, spot: Spot, station: number, level: number): { position: Vec3; guessed?: true } {
  let [x, y, z] = [station, 0, level];
  let isGuess = false;
  for (const name of FIGURE_NAMES) {
    const { spot: its, taken } = FIGURES[name];
    if (its !== spot) continue;
    const { value, guessed } = asked.figures[name];
    isGuess ||= guessed;
    if (taken === 'width') y = value / 2;
    else if (taken === 'height') z = level + value;
    else x = taken === 'ahead' ? station + value : station - value;
  }
  return { position: [x, y, z], ...(isGuess && { guessed: true }) };
}

/** By the mean where the point has a pair, else by the point, seen in the mirror where it is on the right. */
function measuredAt(job: Job, ref: PointRef): readonly [Job, Spotted] {
  const pair = pointInPair(job, ref)?.pair;
  const own = findRecord(job, 'points', bareId(ref))!;
  if (pair === undefined) {
    const onLeft = placeOfPoint(job, own.id)![1] < 0 ? primed(own.id) : own.id;
    return [job, { at: placeOf(job, ref), by: { point: onLeft } }];
  }
  const onPoint = (point: PointRef): Place => ({ kind: 'point', point, offset: [0, 0, 0] });
  const left = addNode(job, pair.left.name, onPoint(pair.left.id));
  const right = addNode(left, `${pair.right.name}, mirrored`, onPoint(primed(pair.right.id)));
  const nodes = [left.nodes.at(-1)!.id, right.nodes.at(-1)!.id] as const;
  const mean = addNode(right, `Mean of ${pair.left.name} and ${pair.right.name}`, {
    kind: 'between',
    nodes,
    fraction: 0.5,
  });
  const at = interpolate(pair.left.position, mirrored(pair.right.position), 0.5);
  return [mean, { at, by: { node: mean.nodes.at(-1)!.id } }];
}

/** What a node says to have this coordinate of the car, mm, by the place: 0 along, 1 across, 2 up. */
export const follows = ({ at, by }: Spotted, axis: 0 | 1 | 2, value: number): Coordinate => ({
  ...by,
  plus: value - at[axis],
});

/** A node at that place of the car, which goes by one of its places. */
export const goingBy = (spotted: Spotted, [x, y, z]: Vec3): Place =>
  'point' in spotted.by
    ? {
        kind: 'point',
        point: spotted.by.point,
        offset: [x - spotted.at[0], y - spotted.at[1], z - spotted.at[2]],
      }
    : { kind: 'lined-up', x: follows(spotted, 0, x), y: follows(spotted, 1, y), z: follows(spotted, 2, z) };
