/** Hoops that read the same from both ends, which can be marked from their middle outwards. */
import { toRadians, wrapHalfTurn, type Radians } from '../geometry/angle.ts';
import type { SolvedTube } from './types.ts';

/** What lengths and angles of the model are promised to: mm, and 0.0001 degrees. */
const SAME_LENGTH = 0.001;
const SAME_ANGLE: Radians = toRadians(0.0001);

/**
 * Mirror image of itself, end for end: straights, angles and radii read the same from both ends to 0.001 mm and 0.0001
 * degrees, rotations read opposite (an S is no hoop: two bends in the middle lie in one plane on the same side). Judged by the
 * tube's own numbers, wherever it stands in the car; the cuts at its ends do not count.
 */
export function isSymmetricHoop({ straights, bends }: SolvedTube): boolean {
  const same = (values: readonly number[], within: number): boolean =>
    values.every((value, i) => Math.abs(value - values.at(-1 - i)!) <= within);
  const [radii, angles] = [bends.map((bend) => bend.radius), bends.map((bend) => bend.angle)];
  const rotations = bends.slice(1).map((bend) => bend.rotation);
  return (
    same(straights, SAME_LENGTH) &&
    same(radii, SAME_LENGTH) &&
    same(angles, SAME_ANGLE) &&
    rotations.every((rotation, i) => {
      const inTheMiddle = 2 * i + 1 === rotations.length;
      const off = inTheMiddle ? rotation : wrapHalfTurn(rotation + rotations.at(-1 - i)!);
      return Math.abs(off) <= SAME_ANGLE;
    })
  );
}
