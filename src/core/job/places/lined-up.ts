/** A node whose three coordinates are given each on its own: in line with nodes and points, or by a number. */
import * as v from 'valibot';
import type { Part } from '../kinds/kind.ts';
import { COORDINATE_KEYS, coordinateReferences, coordinateShape, type Coordinate } from './coordinate.ts';

export interface LinedUpPlace {
  readonly kind: 'lined-up';
  readonly x: Coordinate;
  readonly y: Coordinate;
  readonly z: Coordinate;
}

const each = coordinateShape({});

export const linedUpPlace = {
  shape: v.looseObject({ kind: v.literal('lined-up'), x: each, y: each, z: each }),
  keys: ['kind x y z', COORDINATE_KEYS],
  beyondShape: (place, at) =>
    (['x', 'y', 'z'] as const).flatMap((axis) => coordinateReferences(place[axis], `${at}.${axis}`)),
} satisfies Part<LinedUpPlace>;
