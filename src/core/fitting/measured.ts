/** The places of the car that a fitting goes by: what was measured, and no guess. */
import { trimPlaces, type TrimPlace } from '../gaps/trim-places.ts';
import { bareId } from '../job/reference.ts';
import { remembered } from '../remembered.ts';
import type { Frame } from '../solve/types.ts';

/** As trimPlaces has them, without points that are a guess and lines through one; worked out once a frame. */
export const measuredPlaces = remembered((frame: Frame): readonly TrimPlace[] => {
  const guessed = new Set(frame.job.points.filter((point) => point.guessed).map(({ id }) => id));
  return trimPlaces(frame, (of) =>
    'points' in of ? !of.points.some((to) => guessed.has(bareId(to))) : !guessed.has(of.id),
  );
});
