/**
 * The measured points and what was read of them, as equations: which coordinates are unknown, which are held or tied to others, and what each reading
 * misses by where the points lie now. docs/maths/survey.md.
 */
import { AXIS_INDEX, mirrored, type Vec3 } from '../geometry/vector.ts';
import { pointsOf, sigmaOf, type Measurement } from '../job/kinds/measurement.ts';
import type { Point } from '../job/kinds/point.ts';
import { bareId, isPrimed, type PointId, type PointRef } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import { readingAt } from './equation.ts';
import { floorOf, POSE, SQUARE_FLOOR } from './floor.ts';

/** What a survey is made of. */
export type Surveyed = Pick<Job, 'points' | 'holds' | 'measurements' | 'survey'>;

export interface Network {
  readonly measurements: readonly Measurement[];
  /** The points whose places are asked for, in the job's order. */
  readonly asked: readonly Point[];
  /** Where each point's three coordinates stand among all. */
  readonly first: ReadonlyMap<PointId, number>;
  /** Coordinates as typed, held or guessed, three a point; where the car stands askew the six figures of its pose come after them. */
  readonly guess: Float64Array;
  /** Of these the ones that are asked for. */
  readonly unknown: readonly number[];
  /** Coordinates whose mean with another one is held. */
  readonly tied: readonly Tie[];
  /** Where the pose begins among the coordinates; null where the car stands square. */
  readonly pose: number | null;
  /** Of each point: on which side of the centre plane it is thought, 1 left. */
  readonly side: ReadonlyMap<PointId, 1 | -1>;
}

/** The coordinate `at` is `plus` and `sign` times the one `to`. */
interface Tie {
  readonly at: number;
  readonly to: number;
  readonly sign: number;
  readonly plus: number;
}

interface Held {
  readonly at: number;
  readonly sign: number;
  readonly isAsked: boolean;
}

/** Whether its place comes of measurements. */
export const isMeasured = ({ by }: Point): boolean => by === 'survey';

/** Null where no point's place comes of measurements, and nothing was measured. */
export function networkOf({ points, holds, measurements, survey }: Surveyed): Network | null {
  const asked = points.filter(isMeasured);
  if (asked.length === 0 && measurements.length === 0) return null;
  const first = new Map(points.map(({ id }, i) => [id, 3 * i]));
  const pose = survey?.askew ? 3 * points.length : null;
  const guess = Float64Array.from([
    ...points.flatMap(({ position }) => position),
    ...(pose === null ? [] : Array.from({ length: POSE }, () => 0)),
  ]);
  const fixed = new Set<number>();
  const tied: Tie[] = [];
  const isAsked = new Set(asked.map(({ id }) => id));
  for (const { point, and, axis, value } of holds) {
    const [own, other] = [point, and ?? point].map((reference) => ({
      at: first.get(bareId(reference))! + AXIS_INDEX[axis],
      // An image's offset is the other way.
      sign: axis === 'y' && isPrimed(reference) ? -1 : 1,
      isAsked: isAsked.has(bareId(reference)),
    })) as [Held, Held];
    const off = (2 * value - own.sign * guess[own.at]! - other.sign * guess[other.at]!) / 2;
    // Of a point and its own image the mean lies on the centre plane, wherever the point is.
    if (own.at === other.at && own.sign !== other.sign) continue;
    if (own.at === other.at || !other.isAsked) {
      if (own.isAsked)
        hold(own.at, own.sign * (own.at === other.at ? value : 2 * value - other.sign * guess[other.at]!));
    } else if (!own.isAsked) hold(other.at, other.sign * (2 * value - own.sign * guess[own.at]!));
    else {
      guess[own.at]! += own.sign * off;
      hold(other.at, guess[other.at]! + other.sign * off);
      tied.push({ at: other.at, to: own.at, sign: -own.sign * other.sign, plus: 2 * other.sign * value });
    }
  }
  return {
    measurements,
    asked,
    first,
    guess,
    unknown: [
      ...asked.flatMap(({ id }) => [0, 1, 2].map((k) => first.get(id)! + k)).filter((at) => !fixed.has(at)),
      ...(pose === null ? [] : Array.from({ length: POSE }, (_, k) => pose + k)),
    ],
    tied,
    pose,
    side: sidesAt(first, guess),
  };

  function hold(at: number, value: number): void {
    guess[at] = value;
    fixed.add(at);
  }
}

/** On which side of the centre plane each point lies at these places, 1 left or in it. */
export const sidesAt = (first: Network['first'], places: Float64Array): ReadonlyMap<PointId, 1 | -1> =>
  new Map([...first].map(([id, at]) => [id, places[at + 1]! < 0 ? -1 : 1]));

/** Puts a coordinate there, and the one whose mean with it is held where that wants it. */
export function put({ tied }: Network, places: Float64Array, at: number, value: number): void {
  places[at] = value;
  for (const each of tied) if (each.to === at) places[each.at] = each.plus + each.sign * value;
}

/** Which unknown moves each coordinate, -1 for none, and whether with it or against it. */
export interface Slots {
  readonly of: Int32Array;
  readonly sign: Float64Array;
}

/** Of these unknowns. */
export function slotsOf({ guess, tied }: Network, unknown: readonly number[]): Slots {
  const of = new Int32Array(guess.length).fill(-1);
  const sign = new Float64Array(guess.length).fill(1);
  unknown.forEach((at, i) => (of[at] = i));
  for (const tie of tied) {
    of[tie.at] = of[tie.to]!;
    sign[tie.at] = tie.sign;
  }
  return { of, sign };
}

/** Unknowns in blocks, by their places among these: a point's own, and the pose's; and which blocks a reading or a held mean brings together. */
export function blocksOf(
  network: Network,
  used: readonly number[],
  unknown: readonly number[],
  { of }: Slots,
): { readonly blocks: readonly (readonly number[])[]; readonly links: readonly (readonly number[])[] } {
  const { measurements, first, pose, tied } = network;
  const ownerOf = (coordinate: number): number =>
    pose !== null && coordinate >= pose ? pose : coordinate - (coordinate % 3);
  const blocks: number[][] = [];
  const blockAt = new Map<number, number>();
  const blockOf = unknown.map((coordinate, slot) => {
    const owner = ownerOf(coordinate);
    const block = blockAt.get(owner) ?? blocks.push([]) - 1;
    blockAt.set(owner, block);
    blocks[block]!.push(slot);
    return block;
  });
  const linked = (starts: readonly number[]): readonly number[] => {
    const slots = starts.flatMap((start) => [of[start]!, of[start + 1]!, of[start + 2]!]).filter((slot) => slot >= 0);
    return [...new Set(slots.map((slot) => blockOf[slot]!))];
  };
  const readings = used.map((index) => {
    const measurement = measurements[index]!;
    const isOfTheCar = measurement.kind === 'distance' || measurement.kind === 'width';
    const points = pointsOf(measurement).map(([, point]) => first.get(bareId(point))!);
    return linked([...points, ...(pose === null || isOfTheCar ? [] : [pose])]);
  });
  return { blocks, links: [...readings, ...tied.map(({ at, to }) => linked([ownerOf(at), ownerOf(to)]))] };
}

/** One reading where the points lie now. */
export interface Row {
  /** In the network's list. */
  readonly index: number;
  readonly deviation: number;
  /** Computed less measured. */
  readonly residual: number;
  /** Places among the unknowns that it hangs on, and how it changes with each. */
  readonly at: readonly number[];
  readonly slopes: readonly number[];
}

/** The place of a point, or of its image, in a list of coordinates. */
export const placeIn =
  ({ first }: Pick<Network, 'first'>, places: Float64Array) =>
  (reference: PointRef): Vec3 => {
    const at = first.get(bareId(reference))!;
    const place: Vec3 = [places[at]!, places[at + 1]!, places[at + 2]!];
    return isPrimed(reference) ? mirrored(place) : place;
  };

/** The readings of these indices at these places; slopes along `unknown` alone. */
export function rowsAt(
  network: Network,
  used: readonly number[],
  unknown: readonly number[],
  places: Float64Array,
): readonly Row[] {
  const slots = slotsOf(network, unknown);
  const at = placeIn(network, places);
  const floor = network.pose === null ? SQUARE_FLOOR : floorOf(places.subarray(network.pose));
  const sideOf = (reference: PointRef): 1 | -1 => network.side.get(bareId(reference))!;
  return used.map((index): Row => {
    const measurement = network.measurements[index]!;
    const { value, slopes, pose } = readingAt(measurement, at, sideOf, floor);
    const sums = new Map<number, number>();
    const sum = (coordinate: number, slope: number): void => {
      const unknownAt = slots.of[coordinate]!;
      if (unknownAt >= 0) sums.set(unknownAt, (sums.get(unknownAt) ?? 0) + slots.sign[coordinate]! * slope);
    };
    for (const [reference, slope] of slopes) {
      const start = network.first.get(bareId(reference))!;
      for (let k = 0; k < 3; k++) {
        if (slope[k] !== 0) sum(start + k, k === 1 && isPrimed(reference) ? -slope[k] : slope[k]!);
      }
    }
    pose.forEach((slope, k) => sum(network.pose! + k, slope));
    return {
      index,
      deviation: sigmaOf(measurement),
      residual: value - measurement.value,
      at: [...sums.keys()],
      slopes: [...sums.values()],
    };
  });
}
