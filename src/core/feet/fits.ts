/** Whether a tube's outline finds its place on the foot: past the edge, into the bend, over a hole. Facts for the checks. */
import { ROUNDING } from '../geometry/tolerance.ts';
import { kinkAxis, kinkSetBack } from '../job/kinds/kink.ts';
import { distanceFrom, reachOf } from './outline.ts';
import type { Stand } from './stand.ts';

export interface Fits {
  /** How far the outline stands past the plate's edge, along or across, whichever is more, mm; 0 where it does not. */
  readonly over: number;
  /** A plate of this size, along and across, its middle at the same place, would just take it. */
  readonly takes: readonly [number, number];
  /** How far it runs into the bend of a kink, mm; 0 where it does not. */
  readonly intoBend: number;
  /** The first hole that it reaches over, counted from 1, and how far over its edge, mm. */
  readonly hole: { readonly number: number; readonly by: number } | null;
}

/** Null where the tube has no outline on the foot. */
export function fitsOn({ foot, outline }: Stand): Fits | null {
  if (outline === null) return null;
  const reach = reachOf(outline);
  const kink = foot.kind === 'plate' ? foot.kink : undefined;
  const bentAxis = kink === undefined ? null : kinkAxis(kink);
  const needs = reach.map(([least, greatest], axis) => {
    // Towards the kink the plate goes on round the bend.
    if (axis !== bentAxis) return 2 * Math.max(-least, greatest);
    return 2 * (kink!.at > 0 ? -least : greatest);
  });
  const over = Math.max(needs[0]! - foot.size[0], needs[1]! - foot.size[1]) / 2;
  const covered = (foot.holes ?? []).map(({ at, diameter }) => diameter / 2 - distanceFrom(outline, at));
  const hole = covered.findIndex((by) => by > ROUNDING);
  return {
    over: over > ROUNDING ? over : 0,
    takes: [Math.max(needs[0]!, foot.size[0]), Math.max(needs[1]!, foot.size[1])],
    intoBend:
      kink === undefined
        ? 0
        : Math.max(0, towards(reach[kinkAxis(kink)], kink.at) - (Math.abs(kink.at) - kinkSetBack(foot, kink))),
    hole: hole === -1 ? null : { number: hole + 1, by: covered[hole]! },
  };
}

const towards = ([least, greatest]: readonly [number, number], at: number): number => (at > 0 ? greatest : -least);
