/** The kinds of place that a node can have. */
import type { BetweenPlace } from './places/between.ts';
import type { FixedPlace } from './places/fixed.ts';
import type { OnMember } from './places/on.ts';
import type { PointPlace } from './places/point.ts';
import type { RayPlace } from './places/ray.ts';

export type Place = FixedPlace | PointPlace | OnMember | BetweenPlace | RayPlace;
