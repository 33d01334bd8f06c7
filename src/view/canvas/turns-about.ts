/** What the view turns about, so that what one works on stays in sight. */
import { boxRound } from '../../core/geometry/box-tree.ts';
import { addScaled, interpolate, type Vec3 } from '../../core/geometry/vector.ts';
import type { Projection } from '../camera/projection.ts';
import { tubeAt, type Sight } from './sight.ts';

/** The middle of what is chosen, where it lies within the bay; else null. `places`: all that must be seen to see it. */
export function chosenMiddle(places: readonly Vec3[], view: Projection): Vec3 | null {
  if (places.length === 0) return null;
  const { low, high } = boxRound(places, 0);
  const middle = interpolate(low, high, 0.5);
  const { x, y } = view.toScreen(middle);
  return x >= 0 && y >= 0 && x <= view.width && y <= view.height ? middle : null;
}

/** The place on a tube's wall under the pixel, within `reach` pixels; null where there is none. */
export function wallUnder(tubes: Sight, view: Projection, x: number, y: number, reach: number): Vec3 | null {
  const seen = tubeAt(tubes, view, x, y, reach);
  return seen === null ? null : addScaled(view.toPlace(x, y), view.toEye, seen.depth);
}
