/**
 * What a person takes to the car to be measured: its places, numbered, on either side, and the tapes that check them. They are those that a
 * layout goes by, where one is meant, bound to the job's points as their names tell; then the job's other points.
 */
import { add, mirrored, scale, subtract, ORIGIN, type Axis, type Vec3 } from '../geometry/vector.ts';
import type { Measurement } from '../job/kinds/measurement.ts';
import type { Point } from '../job/kinds/point.ts';
import type { PointId } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import { measuredPoints } from './measured-points.ts';
import { pairsOfPoints } from './point-pairs.ts';
import { pointsTelling } from './spots-by-name.ts';
import { SPOTS, spotsOf, USUAL, type LayoutName, type Spot } from './spots.ts';
import { unpaired } from './unpaired.ts';

/** Of the car; the middle is its centre plane. */
export type Side = 'left' | 'right' | 'middle';

/** A place on one side. */
export interface SideOfPlace {
  readonly side: Side;
  /** Null where nothing has been read of it yet. */
  readonly point: Point | null;
  /** Where it is, or is about, mm. */
  readonly at: Vec3;
}

export interface Place {
  /** From 1. */
  readonly number: number;
  /** Null for a point of the job that is none of the layout's places. */
  readonly spot: Spot | null;
  /** Left before right; one alone where the job has no more. */
  readonly sides: readonly SideOfPlace[];
}

/** One place crossed with another: a tape from the left of each to the right of the other. */
export interface Crossed {
  readonly from: Place;
  readonly to: Place;
}

/** From one side of the car to the other. */
export interface TapeStep {
  readonly kind: 'tape';
  readonly from: readonly [Place, SideOfPlace];
  readonly to: readonly [Place, SideOfPlace];
}

/** One figure to read. */
export type Step =
  | { readonly kind: 'coordinate'; readonly place: Place; readonly on: SideOfPlace; readonly axis: Axis }
  | TapeStep;

export interface ToMeasure {
  readonly places: readonly Place[];
  readonly crossed: readonly Crossed[];
  /** Where the layout's places are, or are about, by which the car is drawn, mm; null where nothing tells how the job's points lie to them. */
  readonly car: Readonly<Record<Spot, Vec3>> | null;
}

/** The layout that is meant where nobody has said: of a job without tubes one that goes by every place, else none. */
export const layoutMeant = ({ members }: Pick<Job, 'members'>): LayoutName | null =>
  members.length === 0 ? 'six-point' : null;

/** `layout` null: the job's points alone. */
export function toMeasure(job: Job, layout: LayoutName | null): ToMeasure {
  const points = measuredPoints(job);
  const told = new Map(SPOTS.map((spot) => [spot, sidesTold(points, spot)]));
  const car = carOf(told);
  const spots = layout === null ? SPOTS.filter((spot) => told.get(spot)!.length > 0) : spotsOf(layout);
  const used = new Set(spots.flatMap((spot) => told.get(spot)!.map(({ point }) => point)));
  const rows: readonly Omit<Place, 'number'>[] = [
    ...spots.map((spot) => ({
      spot,
      sides: layout === null ? told.get(spot)! : bothSides(told.get(spot)!, car[spot]),
    })),
    ...others(points.filter((point) => !used.has(point))).map((sides) => ({ spot: null, sides })),
  ];
  const places = rows.map((row, i) => ({ number: i + 1, ...row }));
  return { places, crossed: crossedOf(places), car: spots.length > 0 ? car : null };
}

const sideOf = (point: Point): Side => (point.position[1] > 0 ? 'left' : 'right');

const asSide = (point: Point): SideOfPlace => ({ side: sideOf(point), point, at: point.position });

/** The job's points at the place, one a side at most: a pair where there is one. */
function sidesTold(points: readonly Point[], spot: Spot): readonly SideOfPlace[] {
  const own = pointsTelling(points, spot).filter(({ position }) => position[1] !== 0);
  const { of } = pairsOfPoints(points);
  const pair = own.flatMap((point) => of.get(point.id) ?? [])[0];
  const first = (side: Side): readonly Point[] => own.filter((point) => sideOf(point) === side).slice(0, 1);
  const [left, right] = pair === undefined ? [first('left'), first('right')] : [[pair.left], [pair.right]];
  return [...left, ...right].map(asSide);
}

/** The same with a side of which nothing was read yet. */
const bothSides = (told: readonly SideOfPlace[], about: Vec3): readonly SideOfPlace[] =>
  (['left', 'right'] as const).map(
    (side) =>
      told.find((each) => each.side === side) ?? { side, point: null, at: side === 'left' ? about : mirrored(about) },
  );

/** Each place as measured, on the left; the others as far from these as on an ordinary car. */
function carOf(told: ReadonlyMap<Spot, readonly SideOfPlace[]>): Readonly<Record<Spot, Vec3>> {
  const known = new Map(
    [...told].flatMap(([spot, [one]]) =>
      one === undefined ? [] : [[spot, one.side === 'left' ? one.at : mirrored(one.at)] as const],
    ),
  );
  const sum = [...known].reduce<Vec3>((all, [spot, at]) => add(all, subtract(at, USUAL[spot])), ORIGIN);
  const [along, , up] = known.size === 0 ? ORIGIN : scale(sum, 1 / known.size);
  const about = (spot: Spot): Vec3 => known.get(spot) ?? add(USUAL[spot], [along, 0, up]);
  return Object.fromEntries(SPOTS.map((spot) => [spot, about(spot)])) as Record<Spot, Vec3>;
}

/** Pairs, and points alone, in the order of the job. */
function others(points: readonly Point[]): readonly (readonly SideOfPlace[])[] {
  const { of } = pairsOfPoints(points);
  const inMiddle = new Set(unpaired(points).flatMap(({ why, point }) => (why === 'centre' ? [point.id] : [])));
  const seen = new Set<PointId>();
  return points.flatMap((point) => {
    if (seen.has(point.id)) return [];
    const pair = of.get(point.id);
    if (pair === undefined)
      return [[inMiddle.has(point.id) ? { ...asSide(point), side: 'middle' as const } : asSide(point)]];
    seen.add(pair.left.id).add(pair.right.id);
    return [[asSide(pair.left), asSide(pair.right)]];
  });
}

/** What each place of a layout is crossed with: what a body is welded to, so that a car out of square shows. */
const CROSSED: Readonly<Partial<Record<Spot, Spot>>> = {
  'belt-b': 'floor-b',
  'roof-b': 'floor-b',
  tower: 'roof-b',
  'screen-top': 'roof-b',
  'screen-foot': 'screen-top',
  'floor-a': 'floor-b',
};

/** Every place that has two sides with another: as CROSSED says, else with the first. */
function crossedOf(places: readonly Place[]): readonly Crossed[] {
  const [first, ...rest] = places.filter(({ sides }) => sides.length === 2);
  return rest.map((to) => {
    const wanted = to.spot === null ? undefined : CROSSED[to.spot];
    return { from: (wanted && places.find(({ spot, sides }) => spot === wanted && sides.length === 2)) ?? first!, to };
  });
}

const AXES: readonly Axis[] = ['x', 'y', 'z'];

/** Every figure, in the order in which a person goes round: place by place, then the tapes across. */
export function stepsOf({ places, crossed }: ToMeasure): readonly Step[] {
  return [
    ...places.flatMap((place) => [
      ...place.sides.flatMap((on) => AXES.map((axis): Step => ({ kind: 'coordinate', place, on, axis }))),
      ...widthOf(place),
    ]),
    ...crossed.flatMap(diagonalsOf),
  ];
}

/** The tape from side to side; none where the place has one side alone. */
export function widthOf(place: Place): readonly TapeStep[] {
  const [left, right] = place.sides;
  return right === undefined ? [] : [{ kind: 'tape', from: [place, left!], to: [place, right] }];
}

/** From the left of the one to the right of the other, and from its right to the other's left: alike on a car that is true. */
export function diagonalsOf({ from, to }: Crossed): readonly [TapeStep, TapeStep] {
  const tape = (one: 0 | 1): TapeStep => ({
    kind: 'tape',
    from: [from, from.sides[one]!],
    to: [to, to.sides[1 - one]!],
  });
  return [tape(0), tape(1)];
}

/** What was read of it last and counts; null where nothing does. */
export const readingOf = ({ measurements }: Pick<Job, 'measurements'>, step: Step): Measurement | null =>
  measurements.findLast((reading) => !reading.excluded && isOf(reading, step)) ?? null;

/** What was read of it last and is left out; null where nothing is. */
export const leftOutOf = ({ measurements }: Pick<Job, 'measurements'>, step: Step): Measurement | null =>
  measurements.findLast((reading) => reading.excluded === true && isOf(reading, step)) ?? null;

function isOf(reading: Measurement, step: Step): boolean {
  if (step.kind === 'coordinate') {
    return reading.kind === 'coordinate' && reading.axis === step.axis && reading.point === step.on.point?.id;
  }
  const [one, other] = [step.from[1].point?.id, step.to[1].point?.id];
  if (reading.kind !== 'distance' || one === undefined || other === undefined) return false;
  return (reading.from === one && reading.to === other) || (reading.from === other && reading.to === one);
}

/** -1 where a person reads the figure the other way round than it is kept: the offset of the right side, which is read off the centreline to the right. */
export const wayRound = (step: Step): 1 | -1 =>
  step.kind === 'coordinate' && step.axis === 'y' && step.on.side === 'right' ? -1 : 1;

/** Whether the figure has to be more than 0: a tape, and how far one side is off the centreline. */
export const isBeyondZero = (step: Step): boolean =>
  step.kind === 'tape' || (step.axis === 'y' && step.on.side !== 'middle');
