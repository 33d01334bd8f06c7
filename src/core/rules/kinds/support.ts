/**
 * Whether a bent bar is held where it stands out farthest: at the place farthest from the straight line between its ends some tube is coped to it, within so
 * many mm along it, and lies no more than so many degrees out of the plane of its bends.
 */
import { toDegrees } from '../../geometry/angle.ts';
import { farthestAlong } from '../../geometry/path-reach.ts';
import { ROUNDING } from '../../geometry/tolerance.ts';
import { cross, dot, normalize, scale, subtract, type Vec3 } from '../../geometry/vector.ts';
import type { Judge, Outcome } from '../types.ts';
import { landingsOn } from './landings.ts';
import { planeOf } from './tilt.ts';

export const support: Judge<'support'> = (check, ask) => {
  const bars = ask.bars(check.roles, 'bent');
  if (bars.length === 0)
    return ask.bars(check.roles).length === 0 ? [] : [{ unknown: { id: 'no-bends' }, concerns: [], at: null }];
  return bars.map((bar): Outcome => {
    const concerns = ask.tubes([bar]).map(({ id }) => id);
    const normal = planeOf(bar);
    if (normal === null) return { unknown: { id: 'not-flat' }, concerns, at: bar.ends[0].position };
    const chord = subtract(bar.ends[1].position, bar.ends[0].position);
    const out = normalize(cross(chord, normal));
    const off = (place: Vec3): number => Math.abs(dot(subtract(place, bar.ends[0].position), out));
    const farthest = [out, scale(out, -1)]
      .map((way) => farthestAlong(bar.path, way))
      .reduce((one, other) => (off(other.point) > off(one.point) ? other : one));
    // All of a straight that runs along the chord is as far off.
    const level = bar.path.pieces.find(({ from, to }) =>
      [from, to].every((end) => off(end) >= off(farthest.point) - ROUNDING),
    );
    const [begin, stop] = level === undefined ? [farthest.at, farthest.at] : [level.at, level.at + level.length];
    const within = (check.within ?? bar.section.outerDiameter) + ROUNDING;
    const leans = landingsOn(bar, ask)
      .filter(({ at }) => at >= begin - within && at <= stop + within)
      .map(({ direction }) => toDegrees(Math.asin(Math.min(1, Math.abs(dot(direction, normal))))));
    return leans.length === 0
      ? { fails: { id: 'unsupported' }, concerns, at: farthest.point }
      : { value: Math.min(...leans), concerns, at: farthest.point };
  });
};
