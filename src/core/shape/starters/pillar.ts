/**
 * The hoop's side, in the plane across the car at its station: foot beside the sill, shoulder at the belt line or inside it, corner at the roof. From
 * the shoulder the tube leans in until it clears the roof rail by the gap, and its two bends come out in whole degrees.
 */
import { toDegrees, toRadians, type Degrees } from '../../geometry/angle.ts';
import { spotted, type Plan } from './plan.ts';

export interface Pillar {
  /** Along the car: of all three. */
  readonly x: number;
  /** Across and up, mm. */
  readonly foot: readonly [y: number, z: number];
  readonly shoulder: readonly [y: number, z: number];
  readonly corner: readonly [y: number, z: number];
  readonly shoulderBend: Degrees;
  /** Of a hoop that runs level over the car from corner to corner. */
  readonly cornerBend: Degrees;
}

/** Least of the lean from the shoulder to the roof: with less the shoulder's bend is too slight to be pulled well (common practice). */
const LEAST_LEAN: Degrees = 10;

/** Most that a leg leans in: a hoop that spreads further from foot to belt line leaves its feet far under the car (common practice). */
const MOST_LEG_LEAN: Degrees = 5;
/** Degrees: what arithmetic leaves over of a whole one. */
const ROUNDED = 1e-9;

export function pillarOf(plan: Plan): Pillar {
  const [floor, belt, roof] = [spotted(plan, 'floor-b').at, spotted(plan, 'belt-b').at, spotted(plan, 'roof-b').at];
  const { off, floorFoot } = plan;
  // The foot's plate keeps off the sill; a leg that would lean out to it stands upright, and none leans far in to reach the belt line.
  const room = floor[1] - floorFoot.size[1] / 2;
  const height = belt[2] - floor[2];
  const shoulder = [Math.min(belt[1] - off, room + Math.tan(toRadians(MOST_LEG_LEAN)) * height), belt[2]] as const;
  const top = roof[2] - off;
  const toRail = Math.hypot(shoulder[0] - roof[1], roof[2] - shoulder[1]);
  const leanToRail = Math.atan2(shoulder[0] - roof[1], roof[2] - shoulder[1]) + Math.asin(off / toRail);
  const lean = Math.max(LEAST_LEAN, Math.ceil(toDegrees(leanToRail)));
  const legLean = Math.max(0, Math.ceil(toDegrees(Math.atan2(shoulder[0] - room, height)) - ROUNDED));
  return {
    x: roof[0],
    foot: [shoulder[0] - Math.tan(toRadians(legLean)) * height, floor[2]],
    shoulder,
    corner: [shoulder[0] - Math.tan(toRadians(lean)) * (top - shoulder[1]), top],
    shoulderBend: lean + legLean,
    cornerBend: 90 - lean,
  };
}
