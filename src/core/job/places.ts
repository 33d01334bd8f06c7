/** The kinds of place that a node can have, a row each. Where one lies is solved in core/solve/place.ts. */
import * as v from 'valibot';
import type { Part } from './kinds/kind.ts';
import { betweenPlace, type BetweenPlace } from './places/between.ts';
import { fixedPlace, type FixedPlace } from './places/fixed.ts';
import { onPlace, type OnMember } from './places/on.ts';
import { pointPlace, type PointPlace } from './places/point.ts';
import { rayPlace, type RayPlace } from './places/ray.ts';

export type Place = FixedPlace | PointPlace | OnMember | BetweenPlace | RayPlace;

/** By kind. A kind of place without a row here does not compile. */
export const PLACES = {
  fixed: fixedPlace,
  point: pointPlace,
  on: onPlace,
  between: betweenPlace,
  ray: rayPlace,
} satisfies { readonly [K in Place['kind']]: Part<Extract<Place, { readonly kind: K }>> };

/** A place of any kind: its shape, its keys, and what its own kind finds beyond the shape. */
export const placePart = {
  shape: v.variant(
    'kind',
    Object.values(PLACES).map(({ shape }) => shape),
  ),
  keys: Object.values(PLACES).flatMap(({ keys }) => keys),
  beyondShape(place, at) {
    const kind: Part<Place> = PLACES[place.kind];
    return kind.beyondShape?.(place, at) ?? [];
  },
} satisfies Part<Place>;
