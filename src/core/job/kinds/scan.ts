/** A scan of the car that lies round the frame as context: what it is, how it lies, and by which points it was laid. Its data are kept beside the job, not in it. */
import * as v from 'valibot';
import type { Degrees } from '../../geometry/angle.ts';
import type { Vec3 } from '../../geometry/vector.ts';
import { NOT_WHOLE } from '../fault.ts';
import { GREATEST_ACCURACY, MOST_PAIRS, MOST_SCANS } from '../limits.ts';
import type { PointRef, ScanId } from '../reference.ts';
import { atMost } from './faults.ts';
import { named, number, rotation, upTo } from './fields.ts';
import type { Kind } from './kind.ts';

const UNITS = ['mm', 'cm', 'm', 'in', 'ft'] as const;
const UPS = ['x', 'y', 'z', '-x', '-y', '-z'] as const;

export type ScanUnit = (typeof UNITS)[number];
export type ScanUp = (typeof UPS)[number];

export interface Scan {
  readonly id: ScanId;
  readonly name: string;
  readonly kind: 'triangles' | 'points';
  /** mm: how far a place that is picked on it lies off the car, as a standard deviation. */
  readonly accuracy: number;
  /** As the person picked it, for whoever has to find it again. */
  readonly file: string;
  /** What its data are kept under: the same file gives the same. */
  readonly data: string;
  readonly unit: ScanUnit;
  /** Which axis of the file points up. */
  readonly up: ScanUp;
  /** From the file, in mm and with z up, into the car: turned about the fixed x, then y, then z axis, then shifted. */
  readonly placement: Placement;
  readonly pairs: readonly ScanPair[];
  /** Triangles or points. */
  readonly count: number;
  /** Of a cloud: every so manieth point of the file was taken. */
  readonly every?: number;
  readonly shown: boolean;
}

export interface Placement {
  readonly rotation: readonly [Degrees, Degrees, Degrees];
  readonly shift: Vec3;
}

/** A place on the scan, in the file's own unit and axes, and the measured point that it is. */
export interface ScanPair {
  readonly at: Vec3;
  readonly point: PointRef;
}

/** Of a scan's own coordinates, in whatever unit. */
const FARTHEST_IN_FILE = 1_000_000;
/** mm. One of a million metres, laid down. */
const FARTHEST_SHIFT = 10_000_000_000;

/** Of triangles, points, and what is left out between two points. */
const MOST_OF_THEM = 1_000_000_000;

const within = (greatest: number, outside: string) => {
  const each = number(-greatest, greatest, outside, outside);
  return v.strictTuple([each, each, each]);
};
const whole = v.pipe(number(1, MOST_OF_THEM, 'counts from 1', `beyond ${MOST_OF_THEM}`), v.integer(NOT_WHOLE));

export const scanKind: Kind<Scan> = {
  word: 'scan',
  letter: 'scan',
  shape: v.looseObject({
    ...named,
    kind: v.picklist(['triangles', 'points']),
    accuracy: upTo(GREATEST_ACCURACY),
    file: v.string(),
    data: v.string(),
    unit: v.picklist(UNITS),
    up: v.picklist(UPS),
    placement: v.looseObject({ rotation, shift: within(FARTHEST_SHIFT, 'too far from the car') }),
    pairs: v.optional(
      v.array(v.looseObject({ at: within(FARTHEST_IN_FILE, 'too far from the scan’s zero'), point: v.string() })),
      [],
    ),
    count: whole,
    every: v.exactOptional(whole),
    shown: v.optional(v.boolean(), true),
  }),
  keys: ['id name kind accuracy file data unit up placement pairs count every shown', 'rotation shift', 'at point'],
  most: MOST_SCANS,
  beyondShape: ({ pairs }, at) => [
    ...atMost(MOST_PAIRS, pairs, `${at}.pairs`),
    ...pairs.map(({ point }, i) => ({ place: `${at}.pairs[${i}].point`, list: 'points' as const, to: point })),
  ],
};
