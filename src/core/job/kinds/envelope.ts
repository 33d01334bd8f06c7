/** What tubes must keep clear of: a box where it is put, and the driver's helmet where it was measured. */
import * as v from 'valibot';
import type { Degrees } from '../../geometry/angle.ts';
import type { Vec3 } from '../../geometry/vector.ts';
import { fault } from '../fault.ts';
import { MOST_BOXES } from '../limits.ts';
import type { EnvelopeId, PointRef } from '../reference.ts';
import { length, named, rotation, size, vector } from './fields.ts';
import type { Kind } from './kind.ts';

interface AnyEnvelope {
  readonly id: EnvelopeId;
  readonly name: string;
  /** Required distance from the box to a tube's surface. */
  readonly gap: number;
}

export interface BoxEnvelope extends AnyEnvelope {
  readonly kind: 'box';
  readonly centre: Vec3;
  /** Full size along the box's own axes. */
  readonly size: Vec3;
  /** Degrees about the fixed x, then y, then z axes. */
  readonly rotation: readonly [Degrees, Degrees, Degrees];
}

/** A person in the car: points measured on whoever sits there, belted and helmeted. Its box is the helmet's, along the car, with the room that the head moves in. */
export interface DriverEnvelope extends AnyEnvelope {
  readonly kind: 'driver';
  /** Highest place of the helmet: the middle of its box's top. */
  readonly helmetTop: PointRef;
  readonly eye?: PointRef;
  /** Where the belts leave them. */
  readonly shoulders?: readonly [PointRef, PointRef];
  /** Of the helmet, mm: length, width, height. */
  readonly helmet: Vec3;
  readonly motion: HeadMotion;
}

/** How far the helmet goes from where it was measured when belts stretch and the driver leans, mm; `side` to either side. */
export interface HeadMotion {
  readonly forward: number;
  readonly back: number;
  readonly side: number;
  readonly up: number;
}

export type Envelope = BoxEnvelope | DriverEnvelope;

/** Of a full-face helmet's shell, about (memory), mm. */
export const USUAL_HELMET: Vec3 = [350, 260, 270];

/** Of a head that stays where it was measured. */
export const NO_MOTION: HeadMotion = { forward: 0, back: 0, side: 0, up: 0 };

/** The points that a driver is measured by. */
export const driverPoints = ({ helmetTop, eye, shoulders }: DriverEnvelope): readonly PointRef[] => [
  helmetTop,
  ...(eye === undefined ? [] : [eye]),
  ...(shoulders ?? []),
];

const threeSizes = v.strictTuple([size, size, size]);
const way = v.optional(length, 0);
const gap = v.optional(length, 0);

export const envelopeKind: Kind<Envelope> = {
  word: 'envelope',
  letter: 'e',
  shape: v.variant('kind', [
    v.looseObject({ ...named, kind: v.literal('box'), centre: vector, size: threeSizes, rotation, gap }),
    v.looseObject({
      ...named,
      kind: v.literal('driver'),
      helmetTop: v.string(),
      eye: v.exactOptional(v.string()),
      shoulders: v.exactOptional(v.strictTuple([v.string(), v.string()])),
      helmet: v.optional(threeSizes, [...USUAL_HELMET]),
      motion: v.optional(v.looseObject({ forward: way, back: way, side: way, up: way }), { ...NO_MOTION }),
      gap,
    }),
  ]),
  keys: ['id name kind centre size rotation helmetTop eye shoulders helmet motion gap', 'forward back side up'],
  most: MOST_BOXES,
  beyondShape: (envelope, at) => {
    if (envelope.kind === 'box') return [];
    const { helmetTop, eye, shoulders } = envelope;
    return [
      { place: `${at}.helmetTop`, list: 'points', to: helmetTop },
      ...(eye === undefined ? [] : [{ place: `${at}.eye`, list: 'points' as const, to: eye }]),
      ...(shoulders ?? []).map((to, i) => ({ place: `${at}.shoulders[${i}]`, list: 'points' as const, to })),
      ...(shoulders !== undefined && shoulders[0] === shoulders[1]
        ? [fault(`${at}.shoulders[1]`, 'is the first shoulder too')]
        : []),
    ];
  },
};
