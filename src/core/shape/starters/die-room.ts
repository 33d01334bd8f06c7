/** Whether the die that was chosen can bend what a cage begun on it asks for, and what die would. */
import { toDegrees, toRadians, type Degrees } from '../../geometry/angle.ts';
import { ANGLE_ROUNDING, ROUNDING } from '../../geometry/tolerance.ts';
import type { Bar } from '../../solve/types.ts';

export type DieTrouble =
  /** Bends want more of a tube than lies between their corners: the greatest centreline radius that leaves the die's straights, mm; 0 or less where none does. */
  | { readonly why: 'radius'; readonly greatest: number }
  /** A bend turns further than the die: the furthest one. */
  | { readonly why: 'angle'; readonly needed: Degrees };

/**
 * Null where the die bends every tube. Of a straight s between set-backs T1 and T2 the corners lie s + T1 + T2 apart; set-backs grow with the radius, so the greatest is
 * R (s + T1 + T2 - least) / (T1 + T2).
 */
export function dieTrouble(bars: readonly Pick<Bar, 'die' | 'bends' | 'straights'>[]): DieTrouble | null {
  const radii = bars.flatMap(({ die, bends, straights }) =>
    die === null || bends.length === 0
      ? []
      : straights.flatMap((straight, i) => {
          const least = i > 0 && i < bends.length ? die.leastStraight : 0;
          if (straight >= least - ROUNDING) return [];
          const setBacks = (bends[i - 1]?.setBack ?? 0) + (bends[i]?.setBack ?? 0);
          return [(die.centrelineRadius * (straight + setBacks - least)) / setBacks];
        }),
  );
  if (radii.length > 0) return { why: 'radius', greatest: Math.min(...radii) };
  const beyond = bars.flatMap(({ die, bends }) =>
    bends
      .filter(({ angle }) => die !== null && angle > toRadians(die.greatestAngle) + ANGLE_ROUNDING)
      .map(({ angle }) => toDegrees(angle)),
  );
  return beyond.length > 0 ? { why: 'angle', needed: Math.max(...beyond) } : null;
}
