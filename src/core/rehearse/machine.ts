/**
 * The machine as simple solids, for the die and the tube in it, and the room round it. Bender axes, mm.
 *
 * A rotary draw bender: the die turns about an upright axis, the clamp holds the tube's front to it and goes round
 * with it, the follower stands still and bears what is behind. No machine is drawn true: the die is
 * a core as wide as the floor of its groove, between two lips as wide as the centreline; the clamp and the follower are
 * blocks on the outside of the tube, as long as the straight that each needs; below the die a column goes down to the
 * floor. All stand BLOCK_GAP off the tube that they hold, so that this does not count as touched.
 */
import { toRadians } from '../geometry/angle.ts';
import { boxFrame } from '../geometry/solid-box.ts';
import { normalize, X_AXIS, Y_AXIS, Z_AXIS, type Vec3 } from '../geometry/vector.ts';
import type { Bender } from '../job/kinds/bender.ts';
import type { Die } from '../job/kinds/die.ts';
import type { Section } from '../job/kinds/section.ts';
import type { MachinePart, Solid } from './types.ts';

/** mm, from the tube's surface to what holds it. */
const BLOCK_GAP = 2;

/** mm. How far the die stands over the tube, and under it. */
const DIE_LIP = 10;

/** +1 where the tube is bent to the left of the feed, -1 to the right: the sense about z in which the die turns. */
export const sideOf = ({ turns }: Bender): 1 | -1 => (turns === 'left' ? 1 : -1);

/** Where the die's axis passes through the bend plane. */
export const dieCentre = (die: Die, bender: Bender): Vec3 => [
  0,
  sideOf(bender) * die.centrelineRadius,
  bender.planeHeight,
];

/**
 * Die, clamp, follower, column and floor, as they stand before the machine is turned. Empty for a die without a
 * bender.
 */
export function machineOf(die: Die, section: Section): readonly Solid[] {
  const { bender } = die;
  if (bender === undefined) return [];
  const side = sideOf(bender);
  const [x, y, plane] = dieCentre(die, bender);
  const tubeRadius = section.outerDiameter / 2;
  const grooveHalf = tubeRadius + BLOCK_GAP;
  const dieHalf = tubeRadius + DIE_LIP;
  /** Along x from `from` to `to`, as thick and as high as the tube. */
  const block = (from: number, to: number): Solid['shape'] => ({
    kind: 'box',
    centre: [(from + to) / 2, -side * (2 * tubeRadius + BLOCK_GAP), plane],
    half: [(to - from) / 2, tubeRadius, tubeRadius],
    axes: [X_AXIS, Y_AXIS, Z_AXIS],
  });
  /** About the die's axis. */
  const cylinder = (part: MachinePart, radius: number, low: number, high: number): Solid => ({
    id: { part },
    turning: part !== 'column',
    shape: { kind: 'cylinder', centre: [x, y, (low + high) / 2], radius, halfHeight: (high - low) / 2 },
  });
  return [
    cylinder('die', Math.max(0, die.centrelineRadius - grooveHalf), plane - dieHalf, plane + dieHalf),
    cylinder('upper-lip', die.centrelineRadius, plane + grooveHalf, plane + dieHalf),
    cylinder('lower-lip', die.centrelineRadius, plane - dieHalf, plane - grooveHalf),
    { id: { part: 'clamp' }, turning: true, shape: block(0, die.leastStraight) },
    { id: { part: 'follower' }, turning: false, shape: block(-die.leastGrip, 0) },
    cylinder('column', die.centrelineRadius / 2, 0, Math.max(0, plane - dieHalf)),
    { id: { part: 'floor' }, turning: false, shape: { kind: 'plane', point: [0, 0, 0], normal: Z_AXIS } },
  ];
}

/** What stands round the machine. */
export function roomOf({ room }: Bender): readonly Solid[] {
  return room.map((obstacle): Solid => {
    const id = { part: 'room', kind: obstacle.kind, name: obstacle.name.trim() } as const;
    const base = { id, turning: false } as const;
    if (obstacle.kind === 'plane') {
      return { ...base, shape: { kind: 'plane', point: obstacle.point, normal: normalize(obstacle.normal) } };
    }
    const [about, then, last] = obstacle.rotation;
    const turn = [toRadians(about), toRadians(then), toRadians(last)] as const;
    return { ...base, shape: { kind: 'box', ...boxFrame(obstacle.centre, obstacle.size, turn) } };
  });
}
