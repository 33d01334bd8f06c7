/** Tubes to rehearse: built from what is bent (straights, rotations, angles), laid out by the program's own door. */
import { toRadians } from '../../../src/core/geometry/angle.ts';
import { isBendable, type BendableTube } from '../../../src/core/rehearse/bendable.ts';
import type { Bender } from '../../../src/core/job/kinds/bender.ts';
import type { Derived } from '../../../src/core/derive.ts';
import { derived, tube } from '../frame.ts';
import { add, axis, rotated, scaled, type Triple } from './turning.ts';

export const BENDER = {
  turns: 'left',
  bendLies: 'beyond',
  planeHeight: 900,
  rotationBy: 'level',
  levelStep: 0.1,
  wheelStep: 1,
  pullStep: 0.5,
  room: [],
} satisfies Bender;

export const DIE = {
  id: 'd',
  name: 'the die',
  outerDiameter: 44.45,
  centrelineRadius: 152.4,
  leastStraight: 60,
  leastGrip: 150,
  greatestAngle: 120,
};

export interface Shape {
  /** Degrees: rotation from the bend before, and net angle. */
  readonly bends: readonly { readonly rotation: number; readonly angle: number }[];
  /** One more than bends, mm. */
  readonly straights: readonly number[];
}

/**
 * A tube of that shape, somewhere in the car. No steel is named, so the machine is pulled to the net angle unless
 * `more` has pulls.
 */
export function bendable(...given: Parameters<typeof frameOf>): BendableTube {
  const made = tube(frameOf(...given), 't');
  if (!isBendable(made)) throw new Error('no bend, or no bender');
  return made;
}

/** The frame with that tube alone, 't'. */
export function frameOf(
  { bends, straights }: Shape,
  bender: Partial<Bender> = {},
  die: object = {},
  more: object = {},
): Derived {
  const radius = (die as { centrelineRadius?: number }).centrelineRadius ?? DIE.centrelineRadius;
  const setBacks = bends.map(({ angle }) => radius * Math.tan(toRadians(angle) / 2));
  let place = axis(0, 0, 0);
  let along = axis(1, 0, 0);
  let normal = axis(0, 0, 1);
  const corners: Triple[] = [place];
  straights.forEach((straight, i) => {
    place = add(place, scaled(along, straight + (setBacks[i - 1] ?? 0) + (setBacks[i] ?? 0)));
    corners.push(place);
    const bend = bends[i];
    if (bend === undefined) return;
    normal = rotated(normal, along, toRadians(bend.rotation));
    along = rotated(along, normal, toRadians(bend.angle));
  });
  return derived({
    sections: [{ id: 'main', outerDiameter: 44.45, wall: 3.048 }],
    dies: [{ ...DIE, bender: { ...BENDER, ...bender }, ...die }],
    nodes: Object.fromEntries(corners.map((corner, i) => [`n${i}`, corner])),
    members: [
      { id: 't', name: 'Tube', path: corners.map((_, i) => `n${i}`), ends: [{ fit: 'square' }, { fit: 'square' }] },
    ],
    ...more,
  });
}
