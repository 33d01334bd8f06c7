/**
 * What lets the cage stand lower while it is welded, and what is in the way. mm, straight down.
 *
 * An end on a box stands on the car itself as long as the box is not in: lower by the box's height, of the walls and the plate on top,
 * along the foot's normal, so straight down by that over the normal's upward part. A plate gives nothing: it lies on the car before the
 * tube comes. An end whose foot's normal does not point up is stopped by nothing. What an end would have to go further down is how
 * deep the hole in the car under it has to be.
 */
import { ROUNDING } from '../geometry/tolerance.ts';
import { normalize } from '../geometry/vector.ts';
import { heightOf } from '../job/kinds/foot.ts';
import type { TubeRef } from '../job/reference.ts';
import type { Frame, TubeEnd } from '../solve/types.ts';

/** An end of a tube that stands on the car. */
export interface StandingEnd {
  readonly tube: TubeRef;
  readonly end: 'A' | 'B';
  readonly isBox: boolean;
  /** How far down it can go with its box not in; 0 on a plate. */
  readonly gives: number;
  /** Left on the end to be trimmed: before that it goes down so much less. */
  readonly left: number;
}

/** In build order; ends that nothing stops are left out. */
export const standingEnds = ({ tubes }: Pick<Frame, 'tubes'>): readonly StandingEnd[] =>
  tubes.flatMap((tube) =>
    tube.ends.flatMap((end, which) => {
      const gives = givesAt(end);
      const isBox = end.foot?.kind === 'box';
      return gives === null
        ? []
        : [
            {
              tube: tube.id,
              end: which === 0 ? 'A' : 'B',
              isBox,
              gives,
              left: end.allowance,
            },
          ];
    }),
  );

/** Null where nothing stops it, or it does not stand on the car. */
function givesAt({ fit, foot, plateNormal }: TubeEnd): number | null {
  if ((fit !== 'foot' && fit !== 'plate') || plateNormal === null) return null;
  const up = normalize(plateNormal)[2];
  if (up <= ROUNDING) return null;
  return foot?.kind === 'box' ? heightOf(foot) / up : 0;
}

/** What all boxes give: as much as the one that gives least. Null without boxes. */
export const boxesGive = (ends: readonly StandingEnd[]): number | null =>
  ends.some(({ isBox }) => isBox) ? Math.min(...ends.filter(({ isBox }) => isBox).map(({ gives }) => gives)) : null;
