/** Which of two places that the readings allow a point has, where nobody has said it. */
import { distance } from '../geometry/vector.ts';
import type { Adjusted } from './adjust.ts';
import { elsewhere, type Elsewhere } from './mirror.ts';
import type { Surveyed } from './network.ts';

/** Of the way between the two places: a guess this near to one of them was meant to be it. */
const SAID = 0.05;

/** Points that lie as well elsewhere, and whose guess is plainly at neither place: to answer is to set the guess. */
export function sidesOpen(surveyed: Surveyed, adjusted: Adjusted): readonly Elsewhere[] {
  const guesses = new Map(surveyed.points.map(({ id, position }) => [id, position]));
  return elsewhere(surveyed, adjusted).filter(
    ({ point, here, there }) => distance(guesses.get(point)!, here) > SAID * distance(here, there),
  );
}
