/** The kinds of place that a node can have, a row each. Where one lies is solved in core/solve/place.ts. */
import { chosenByKind } from './kinds/chosen.ts';
import type { Part } from './kinds/kind.ts';
import { betweenPlace, type BetweenPlace } from './places/between.ts';
import { crossingPlace, type CrossingPlace } from './places/crossing.ts';
import { fixedPlace, type FixedPlace } from './places/fixed.ts';
import { linedUpPlace, type LinedUpPlace } from './places/lined-up.ts';
import { onPlace, type OnMember } from './places/on.ts';
import { pointPlace, type PointPlace } from './places/point.ts';
import { rayPlace, type RayPlace } from './places/ray.ts';
import type { TubeRef } from './reference.ts';

export type Place = FixedPlace | PointPlace | OnMember | BetweenPlace | RayPlace | LinedUpPlace | CrossingPlace;

/** By kind. A kind of place without a row here does not compile. */
export const PLACES = {
  fixed: fixedPlace,
  point: pointPlace,
  on: onPlace,
  between: betweenPlace,
  ray: rayPlace,
  'lined-up': linedUpPlace,
  crossing: crossingPlace,
} satisfies { readonly [K in Place['kind']]: Part<Extract<Place, { readonly kind: K }>> };

/** A place of any kind: its shape, its keys, and what its own kind finds beyond the shape. */
export const placePart = {
  shape: chosenByKind(
    Object.keys(PLACES),
    Object.values(PLACES).map(({ shape }) => shape),
  ),
  keys: Object.values(PLACES).flatMap(({ keys }) => keys),
  beyondShape(place, at) {
    const kind: Part<Place> = PLACES[place.kind];
    return kind.beyondShape?.(place, at) ?? [];
  },
} satisfies Part<Place>;

/** The tube whose centreline the place is on, or beside by an offset; null for places that are on none. */
export const hostOf = (place: Place): TubeRef | null =>
  place.kind === 'on' || place.kind === 'crossing' ? place.member : null;
