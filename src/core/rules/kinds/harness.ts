/**
 * Where the harness bar lies to the shoulders of each driver: `strap-angle` the belt from level, degrees, up from the shoulder to the bar counted plus; `height`
 * the top of the bar straight behind the shoulder over it, mm. Each shoulder on its own, to the nearest bar behind it (belt.ts; docs/maths/head-room.md).
 */
import { distanceToPath } from '../../geometry/path.ts';
import type { Vec3 } from '../../geometry/vector.ts';
import type { TubeRef } from '../../job/reference.ts';
import { placeAmong } from '../../solve/envelope-box.ts';
import type { Bar } from '../../solve/types.ts';
import { meantBy } from '../implied.ts';
import type { Questions } from '../questions.ts';
import type { Judge, Outcome } from '../types.ts';
import { beltFrom, type Belt } from './belt.ts';
import { driversOf } from './drivers.ts';

/** Of each shoulder of each driver the figure of the article: degrees or mm. */
export const harness: Judge<'harness'> = (check, ask) => {
  const drivers = driversOf(ask);
  if (drivers.length === 0) return [{ unknown: { id: 'no-driver' }, concerns: [], at: null }];
  const { roles } = meantBy(check);
  const bars = ask.bars(roles, check.only);
  if (bars.length === 0) return [{ unknown: { id: 'nothing-there', roles }, concerns: [], at: null }];
  const points = ask.points();
  return drivers.flatMap(({ id, helmetTop, shoulders }): readonly Outcome[] => {
    if (shoulders === undefined)
      return [{ unknown: { id: 'no-point', point: 'shoulders' }, concerns: [], at: placeAmong(points, helmetTop) }];
    return shoulders.map((reference): Outcome => {
      const shoulder = placeAmong(points, reference)!;
      const found = nearestBelt(shoulder, bars);
      if (found === null)
        return { unknown: { id: 'not-behind' }, concerns: bars.flatMap((bar) => idsOf(ask, bar)), at: shoulder };
      const [bar, belt] = found;
      const value = check.of === 'strap-angle' ? belt.angle : belt.height;
      return { value, concerns: [tubeAt(ask, bar, belt.on)], envelope: id, at: shoulder, to: belt.on };
    });
  });
};

/** From a shoulder to the bar that is nearest behind it; null where none runs there. */
export function nearestBelt(shoulder: Vec3, bars: readonly Bar[]): readonly [Bar, Belt] | null {
  const found = bars.flatMap((bar): readonly (readonly [Bar, Belt])[] => {
    const belt = beltFrom(shoulder, bar);
    return belt === null ? [] : [[bar, belt]];
  });
  return found.toSorted(([, one], [, other]) => one.back - other.back)[0] ?? null;
}

const idsOf = (ask: Questions, bar: Bar): readonly TubeRef[] => ask.tubes([bar]).map(({ id }) => id);

/** Of a bar in pieces the one that the belt lies on. */
function tubeAt(ask: Questions, bar: Bar, place: Vec3): TubeRef {
  const off = ask.tubes([bar]).map(({ id, path }) => ({ id, apart: distanceToPath(path, place) }));
  return off.reduce((a, b) => (b.apart < a.apart ? b : a)).id;
}
