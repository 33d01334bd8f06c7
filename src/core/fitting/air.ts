/**
 * How much air there is above a joint, up to what was measured of the car. Car axes, mm; above is along +z.
 *
 * What was measured lies over a joint where it lies within `reach` of the joint's place seen from above, and not lower than the axis of the
 * tube whose top is the joint's. Of a measured point that is the point; of a body line, section by section, the place that lies nearest to
 * the joint seen from above, of a section straight up its upper end: there the line passes the joint. Air is the height of that place over the
 * joint's top: exact, in closed form, negative where the tube stands higher. Where nothing lies over the joint nothing is said of the roof.
 */
import type { Trim, TrimPlace } from '../gaps/trim-places.ts';
import type { Stretch } from '../gaps/stretch-gap.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import { interpolate, type Vec3 } from '../geometry/vector.ts';
import type { Joint } from './joints.ts';

/** A measured place within reach of a joint, seen from above. */
export interface Beside {
  readonly trim: Trim;
  readonly at: Vec3;
  /** From the joint's place, seen from above, mm. */
  readonly aside: number;
  /** Over the joint's top, mm; negative under it. */
  readonly air: number;
}

/** All that lies within reach of the joint, be it over it or under it. */
export const besideJoint = (joint: Joint, places: readonly TrimPlace[], reach: number): readonly Beside[] =>
  places.flatMap(({ trim, stretches }) =>
    stretches.flatMap((stretch) => {
      const at = passes(stretch, joint.at);
      const aside = Math.hypot(at[0] - joint.at[0], at[1] - joint.at[1]);
      return aside <= reach + ROUNDING ? [{ trim, at, aside, air: at[2] - joint.top }] : [];
    }),
  );

/** The lowest of those that lie over the joint; of equally low ones the first; null where none does. */
export function roofOver(joint: Joint, beside: readonly Beside[]): Beside | null {
  let lowest: Beside | null = null;
  for (const each of beside) {
    if (each.at[2] >= joint.axis - ROUNDING && each.air < (lowest?.air ?? Infinity)) lowest = each;
  }
  return lowest;
}

/** The place of the stretch nearest to p seen from above. */
function passes({ from, to }: Stretch, p: Vec3): Vec3 {
  const [x, y] = [to[0] - from[0], to[1] - from[1]];
  const square = x * x + y * y;
  if (square <= ROUNDING * ROUNDING) return from[2] > to[2] ? from : to;
  const share = ((p[0] - from[0]) * x + (p[1] - from[1]) * y) / square;
  return interpolate(from, to, Math.min(1, Math.max(0, share)));
}
