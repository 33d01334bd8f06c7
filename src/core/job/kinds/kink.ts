/**
 * The bend of a plate that lies over a kink of the car, from one of two planes to the other: floor to sill, sill to floor. The line is the
 * sharp one in which the two planes meet, on the face that lies on the car.
 */
import * as v from 'valibot';
import { toRadians, type Degrees } from '../../geometry/angle.ts';
import { fault, type Fault } from '../fault.ts';
import { across, angle, coordinate } from './fields.ts';

export interface Kink {
  /** The way in which the line runs on the plate. */
  readonly runs: 'along' | 'across';
  /** From the plate's middle to the line, square to it: along the plate where it runs across, across where it runs along. */
  readonly at: number;
  /** By how much the part beyond the line falls away from the tube; below zero it rises towards it. */
  readonly angle: Degrees;
  /** On the inside of the bend. */
  readonly radius: number;
}

/** A press pushes through rather than bends where the inside radius is a smaller share of the thickness. */
const SHARPEST = 0.1;
/** Degrees either way: a plate that is bent further lies over nothing. */
const FURTHEST: Degrees = 120;

export const kinkPart = {
  shape: v.looseObject({
    runs: v.picklist(['along', 'across']),
    at: coordinate,
    angle: angle(0 - FURTHEST, FURTHEST),
    radius: across,
  }),
  keys: 'runs at angle radius',
};

/** What a kink is bent into. */
interface Bent {
  readonly size: readonly [along: number, across: number];
  readonly thickness: number;
}

/** 0 where the line is met going along the plate, 1 where it is met going across. */
export const kinkAxis = ({ runs }: Kink): 0 | 1 => (runs === 'across' ? 0 : 1);

/**
 * From the line to where the plate is flat, mm, the same on either side, on both faces: the face on the car is the inside of a bend that
 * falls away, r tan(a/2), and the outside of one that rises, (r + t) tan(a/2) (two tangents to one circle).
 */
export function kinkSetBack({ thickness }: Pick<Bent, 'thickness'>, { angle, radius }: Kink): number {
  const onCar = angle < 0 ? radius + thickness : radius;
  return onCar * Math.tan(toRadians(Math.abs(angle)) / 2);
}

/** Of the inside radius of a press brake's bend in sheet so thick, mm. */
export const sharpFaults = (radius: number, thickness: number, place: string): readonly Fault[] =>
  radius < SHARPEST * thickness
    ? [fault(place, 'is less than a tenth of the thickness: no press bends it so sharply')]
    : [];

/** What no shape can check of it. */
export function kinkFaults(plate: Bent, kink: Kink, at: string): Fault[] {
  const [setBack, off] = [kinkSetBack(plate, kink), Math.abs(kink.at)];
  return [
    ...sharpFaults(kink.radius, plate.thickness, `${at}.radius`),
    ...(off <= setBack || off + setBack >= plate.size[kinkAxis(kink)] / 2
      ? [fault(at, 'does not lie between the middle of the plate and its edge')]
      : []),
  ];
}

/** Whether a round of this diameter, its middle so far from the plate's, reaches into the bend. */
export function liesInBend(plate: Bent, kink: Kink, from: readonly [number, number], diameter: number): boolean {
  return Math.abs(from[kinkAxis(kink)] - kink.at) < kinkSetBack(plate, kink) + diameter / 2;
}
