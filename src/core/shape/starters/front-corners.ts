/**
 * Where the corners at the windscreen lie: inside of roof, pillar and dash by the gap, and moved off them a little further where that gives
 * whole degrees, and uprights of one side in one plane, so that the X between them can cross on its axes.
 */
import { angleBetween, toDegrees, type Degrees } from '../../geometry/angle.ts';
import { linePiece, nearestOnPiece } from '../../geometry/path.ts';
import { add, cross, dot, normalize, subtract, type Vec3 } from '../../geometry/vector.ts';
import type { KeptAngle } from '../../job/kinds/member.ts';
import type { NodeRef } from '../../job/reference.ts';
import { pillarOf } from './pillar.ts';
import { spotted, type Plan } from './plan.ts';
import { movesToWhole, type Moves } from './whole-angles.ts';

/** At the windscreen's upper corner: inward of it and below it, by a little more than the gap as the two add up, mm. */
export const screenCorner = (plan: Plan): Vec3 =>
  add(spotted(plan, 'screen-top').at, [0, -0.85 * plan.off, -0.65 * plan.off]);
const cowlCorner = (plan: Plan): Vec3 => add(spotted(plan, 'screen-foot').at, [-plan.off, -plan.off, -plan.off / 2]);

export interface Front {
  readonly screen: Vec3;
  readonly cowl: Vec3;
  readonly foot: Vec3;
}

/** The lower corner so far back, and the upright leant so far: its corner inward, or below zero its foot. */
export const upright = (plan: Plan, back: number, leant: number): Pick<Front, 'cowl' | 'foot'> => ({
  cowl: add(cowlCorner(plan), [-back, -Math.max(leant, 0), 0]),
  foot: add(spotted(plan, 'floor-a').at, [0, -Math.max(-leant, 0), 0]),
});

export interface Shaped extends Front {
  /** None where no whole degrees are near enough. */
  readonly kept: readonly KeptAngle[];
}

/** A tube that is shaped: its way through the corners, which of its bends are to be whole (1 = the first), and whether it has the lower corner. */
export interface Shaping {
  readonly moves: number;
  readonly corners: (moves: Moves) => Front;
  readonly way: (front: Front) => readonly Vec3[];
  readonly bends: readonly (readonly [number: number, corner: NodeRef])[];
  readonly isUpright: boolean;
}

/** Flat and in whole degrees if the moves allow it, else in whole degrees, else as the gap leaves the corners. */
export function shaped(plan: Plan, { moves: count, corners, way, bends, isUpright }: Shaping): Shaped {
  const turnsOf = (front: Front): readonly Degrees[] => {
    const all = turnsAlong(way(front));
    return bends.map(([number]) => all[number - 1]!);
  };
  const after = (flat: boolean) => (moves: Moves) => {
    const front = corners(moves);
    return {
      turns: turnsOf(front),
      apart: flat ? [outOfPlane(plan, front)] : [],
      keepsOff: keepsOff(plan, way(front)),
    };
  };
  const still = (moves: Moves): Moves => [...moves, ...Array.from({ length: count - moves.length }, () => 0)];
  const flat = isUpright ? movesToWhole(count, after(true)) : null;
  const whole = flat ?? movesToWhole(bends.length, (moves) => after(false)(still(moves)));
  const front = corners(still(whole ?? []));
  const turns = turnsOf(front);
  return {
    ...front,
    kept: whole === null ? [] : bends.map(([, corner], i) => ({ corner, angle: Math.round(turns[i]!) })),
  };
}

/** By how much the tube turns at each corner of the way. */
const turnsAlong = (way: readonly Vec3[]): readonly Degrees[] =>
  way
    .slice(1, -1)
    .map((corner, i) => toDegrees(angleBetween(subtract(corner, way[i]!), subtract(way[i + 2]!, corner))));

/** How far the lines of the two uprights, from foot to corner, pass each other, mm; the sign says on which side. */
function outOfPlane(plan: Plan, { cowl, foot: front }: Front): number {
  const { x, foot, shoulder } = pillarOf(plan);
  const rear: Vec3 = [x, ...foot];
  // Square to both: of uprights the way from one to the other turns by that, not their nearest places.
  const across = normalize(cross(subtract([x, ...shoulder], rear), subtract(front, rear)));
  return dot(subtract(cowl, front), across);
}

/** Whether the way keeps off the windscreen's corners. Where a bend rounds a corner the tube lies within it, further off what is outside. */
const keepsOff = (plan: Plan, way: readonly Vec3[]): boolean =>
  [spotted(plan, 'screen-top').at, spotted(plan, 'screen-foot').at].every((corner) =>
    way.slice(1).every((to, i) => nearestOnPiece(linePiece(way[i]!, to, 0), corner).distance >= plan.off),
  );
