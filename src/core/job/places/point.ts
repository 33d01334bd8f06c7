/**
 * A node on a measured point, or off it by an offset: it follows the point. `clear` takes it farther, so that the tube and not its
 * centreline stands off by a gap: a wider tube moves its node away.
 */
import * as v from 'valibot';
import { normalize, ORIGIN, scale, type Vec3 } from '../../geometry/vector.ts';
import { arrowFaults } from '../kinds/faults.ts';
import { length, offset, vector } from '../kinds/fields.ts';
import type { Part } from '../kinds/kind.ts';
import type { PointRef } from '../reference.ts';

export interface PointPlace {
  readonly kind: 'point';
  readonly point: PointRef;
  readonly offset: Vec3;
  readonly clear?: Clear;
}

export interface Clear {
  /** From the point to the tube, car axes; its length does not count. */
  readonly direction: Vec3;
  /** mm, from the point plus offset to the surface of the widest member through the node. */
  readonly gap: number;
}

/** How far, and which way, `clear` takes the node from the point plus offset: the gap and half of `across`, its widest tube, mm. */
export const clearShift = (clear: Clear | undefined, across: number): Vec3 =>
  clear === undefined ? ORIGIN : scale(normalize(clear.direction), clear.gap + across / 2);

export const pointPlace = {
  shape: v.looseObject({
    kind: v.literal('point'),
    point: v.string(),
    offset,
    clear: v.exactOptional(v.looseObject({ direction: vector, gap: length })),
  }),
  keys: ['kind point offset clear', 'direction gap'],
  beyondShape: ({ point, clear }, at) => [
    { place: `${at}.point`, list: 'points', to: point, carried: true },
    ...(clear === undefined ? [] : arrowFaults(clear.direction, `${at}.clear.direction`)),
  ],
} satisfies Part<PointPlace>;
