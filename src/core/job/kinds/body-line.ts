import type { BodyLineId, PointRef } from '../reference.ts';

/** A line of the car's body, drawn through measured points so that one sees where the cage stands. Not derived from. */
export interface BodyLine {
  readonly id: BodyLineId;
  readonly name: string;
  readonly points: readonly PointRef[];
}
