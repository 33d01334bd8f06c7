/**
 * One figure that was read at the car: a tape, a level, a plumb line. The places of measured points come of all of them together
 * (core/survey/adjust.ts); none is changed by that. Coordinates are the car's: along, offset, height.
 */
import * as v from 'valibot';
import type { Axis } from '../../geometry/vector.ts';
import { fault } from '../fault.ts';
import { MOST_MEASUREMENTS } from '../limits.ts';
import type { PointRef } from '../reference.ts';
import { angle, coordinate, id, length, number } from './fields.ts';
import type { Kind, Reference } from './kind.ts';

interface Read {
  readonly id: string;
  /** mm; degrees of an inclination. */
  readonly value: number;
  /** Of `value`, one standard deviation, in its unit. Absent: FIRST_SIGMA of its kind. */
  readonly sigma?: number;
  /** What it was read with, by the name that the shop record had for it. */
  readonly instrument?: string;
  /** It counts for nothing; kept, so that one sees what was read. */
  readonly excluded?: boolean;
}

export type Measurement = Read &
  (
    | { readonly kind: 'distance'; readonly from: PointRef; readonly to: PointRef }
    | { readonly kind: 'coordinate'; readonly point: PointRef; readonly axis: Axis }
    /** From the point to its own mirror image, on whichever side it is. */
    | { readonly kind: 'width'; readonly point: PointRef }
    /** `to` less `from` along one axis. */
    | { readonly kind: 'difference'; readonly from: PointRef; readonly to: PointRef; readonly axis: Axis }
    /** Degrees that `to` is above level, seen from `from`. */
    | { readonly kind: 'inclination'; readonly from: PointRef; readonly to: PointRef }
  );

export type MeasurementKind = Measurement['kind'];

/** Deviations of tape, rule and level at a stripped car (common practice): mm; degrees of an inclination. */
export const FIRST_SIGMA: Readonly<Record<MeasurementKind, number>> = {
  distance: 1.5,
  coordinate: 2,
  width: 2,
  difference: 1,
  inclination: 0.2,
};

export const sigmaOf = ({ sigma, kind }: Pick<Measurement, 'sigma' | 'kind'>): number => sigma ?? FIRST_SIGMA[kind];

/** mm, or degrees. A figure that is surer than the first is no reading, and one less sure than the second tells nothing. */
export const LEAST_SIGMA = 1e-3;
export const GREATEST_SIGMA = 1000;
export const sigma = number(LEAST_SIGMA, GREATEST_SIGMA, `below ${LEAST_SIGMA}`, `beyond ${GREATEST_SIGMA}`);

const AXIS = v.picklist(['x', 'y', 'z']);
const read = {
  id,
  sigma: v.exactOptional(sigma),
  instrument: v.exactOptional(v.string()),
  excluded: v.exactOptional(v.boolean()),
};
const pair = { from: v.string(), to: v.string() };

/** The points that it is measured at, with the key that each stands under. */
export const pointsOf = (measurement: Measurement): readonly (readonly [key: 'point' | 'from' | 'to', PointRef])[] =>
  'point' in measurement
    ? [['point', measurement.point]]
    : [
        ['from', measurement.from],
        ['to', measurement.to],
      ];

export const measurementKind: Kind<Measurement> = {
  word: 'measurement',
  inWords: 'a measurement',
  letter: 'r',
  most: MOST_MEASUREMENTS,
  within: ['survey', 'measurements'],
  shape: v.variant('kind', [
    v.looseObject({ ...read, kind: v.literal('distance'), ...pair, value: length }),
    v.looseObject({ ...read, kind: v.literal('coordinate'), point: v.string(), axis: AXIS, value: coordinate }),
    v.looseObject({ ...read, kind: v.literal('width'), point: v.string(), value: length }),
    v.looseObject({ ...read, kind: v.literal('difference'), ...pair, axis: AXIS, value: coordinate }),
    v.looseObject({ ...read, kind: v.literal('inclination'), ...pair, value: angle(-90, 90) }),
  ]),
  keys: ['id kind from to point axis value sigma instrument excluded'],
  beyondShape: (measurement, at) => [
    ...pointsOf(measurement).map(([key, to]): Reference => ({ place: `${at}.${key}`, list: 'points', to, goes: true })),
    ...('from' in measurement && measurement.from === measurement.to
      ? [fault(`${at}.to`, 'the same point as "from"')]
      : []),
  ],
};
