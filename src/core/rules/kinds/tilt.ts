/**
 * How a bar stands, degrees: `axis` the straight line between its ends, `plane` the plane of its bends, each from the vertical or from level; `joint` the
 * angle between its axis and that of the tube that it is coped to.
 */
import { toDegrees } from '../../geometry/angle.ts';
import { farthestAlong } from '../../geometry/path-reach.ts';
import { dot, normalize, scale, subtract, type Vec3 } from '../../geometry/vector.ts';
import type { CheckOf } from '../../job/kinds/rule-check.ts';
import type { Bar, TubeEnd } from '../../solve/types.ts';
import type { Questions } from '../questions.ts';
import type { Judge, Outcome } from '../types.ts';

/** mm that a bent bar may stand out of its plane and be flat: what a floor shows. */
const FLAT = 2;

/** Of each bar; of one that has to run a way and does not, that alone. */
export const tilt: Judge<'tilt'> = (check, ask) =>
  ask.bars(check.roles, check.only).flatMap((bar): readonly Outcome[] => {
    const concerns = ask.tubes([bar]).map(({ id }) => id);
    const [upper, lower] = endsOf(bar);
    const way = check.runs;
    const ahead = lower.position[0] - upper.position[0];
    if (way !== undefined && (way === 'rearward' ? ahead >= 0 : ahead <= 0))
      return [{ fails: { id: 'runs-otherwise', way }, concerns, at: upper.position }];
    // Of one that is asked the way alone, how far it goes that way.
    if (check.least === undefined && check.most === undefined)
      return [
        { value: Math.abs(ahead), quantity: 'length', least: 0, concerns, at: upper.position, to: lower.position },
      ];
    if (check.of === 'joint') return atJoints(bar, check, ask);
    const from = check.from ?? 'vertical';
    if (check.of === 'plane') {
      const normal = planeOf(bar);
      if (normal === null) return [{ unknown: { id: 'not-flat' }, concerns, at: bar.ends[0].position }];
      const lean = toDegrees(Math.asin(Math.min(1, Math.abs(normal[2]))));
      return [{ value: from === 'vertical' ? lean : 90 - lean, concerns, at: bar.bends[0]!.corner }];
    }
    const [x, y, z] = subtract(upper.position, lower.position);
    const level = Math.hypot(x, y);
    const value = toDegrees(from === 'vertical' ? Math.atan2(level, Math.abs(z)) : Math.atan2(Math.abs(z), level));
    return [{ value, concerns, at: upper.position, to: lower.position }];
  });

/** The higher end first. */
export const endsOf = ({ ends: [a, b] }: Pick<Bar, 'ends'>): readonly [TubeEnd, TubeEnd] =>
  a.position[2] >= b.position[2] ? [a, b] : [b, a];

/** Unit normal of the plane in which the whole centreline lies; null for a straight bar, and where it leaves the plane of its first bend by more than FLAT. */
export function planeOf({ bends, path }: Pick<Bar, 'bends' | 'path'>): Vec3 | null {
  const [first] = bends;
  if (first === undefined) return null;
  const normal = normalize(first.normal);
  const off = [normal, scale(normal, -1)].map((way) =>
    dot(subtract(farthestAlong(path, way).point, first.corner), way),
  );
  return off.every((each) => each <= FLAT) ? normal : null;
}

/** Of each end that is coped to such a bar: the included angle. */
function atJoints(bar: Bar, { onto = [], end }: CheckOf<'tilt'>, ask: Questions): readonly Outcome[] {
  const hosts = ask.bars(onto);
  const tubes = ask.tubes([bar]);
  const concerns = tubes.map(({ id }) => id);
  const [upper, lower] = endsOf(bar);
  const asked = end === undefined ? [upper, lower] : [end === 'upper' ? upper : lower];
  const found = asked.flatMap(({ position, cuts }): readonly Outcome[] =>
    cuts.flatMap(({ against, includedAngle, reaches }) => {
      const host = hosts.find(({ id }) => id === against);
      return host === undefined || !reaches ? [] : [{ value: toDegrees(includedAngle), concerns, at: position }];
    }),
  );
  return found.length > 0 ? found : [{ unknown: { id: 'no-joint', roles: onto }, concerns, at: upper.position }];
}
