/** How wide a hoop is inside, mm between the surfaces of its two legs: at its feet, level across, or where they stand nearest. */
import { nearestToPath } from '../../geometry/nearest-paths.ts';
import { linePiece, nearestOnPath, type Path } from '../../geometry/path.ts';
import { addScaled, distance, normalize, rejectFrom, subtract, type Vec3 } from '../../geometry/vector.ts';
import type { Bar } from '../../solve/types.ts';
import type { Judge, Outcome } from '../types.ts';

export const insideWidth: Judge<'inside-width'> = (check, ask) =>
  ask.bars(check.roles, check.only).map((bar): Outcome => {
    const concerns = ask.tubes([bar]).map(({ id }) => id);
    const [a, b] = bar.ends;
    if (bar.bends.length === 0) return { unknown: { id: 'no-bends' }, concerns, at: a.position };
    const radius = bar.section.outerDiameter / 2;
    if (check.of === 'feet') {
      const across = normalize(subtract(b.position, a.position));
      const inner = [
        addScaled(a.position, across, radius / squareShare(a.direction, across)),
        addScaled(b.position, across, -radius / squareShare(b.direction, across)),
      ] as const;
      return { value: distance(...inner), concerns, at: inner[0], to: inner[1] };
    }
    const [one, other] = [legOf(bar, 0), legOf(bar, 1)];
    const near = nearestToPath(one, other);
    const there = nearestOnPath(other, near.point).point;
    return { value: near.distance - 2 * radius, concerns, at: near.point, to: there };
  });

/** A line across a leaning leg leaves its surface farther from the axis: by one over the sine of the angle between the two. */
const squareShare = (leg: Vec3, across: Vec3): number => Math.hypot(...rejectFrom(across, leg));

/** From the foot to its first bend. */
function legOf(bar: Bar, which: 0 | 1): Path {
  const { position, direction } = bar.ends[which];
  const long = Math.max(bar.straights.at(which === 0 ? 0 : -1)!, 1);
  return { pieces: [linePiece(position, addScaled(position, direction, long), 0)], length: long };
}
