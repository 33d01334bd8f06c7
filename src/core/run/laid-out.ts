/** A tube as its run lays it out: the corners that it was cut for, or is drawn with, rounded to the radius that the marks follow today. */
import type { BentTube } from '../job/kinds/bent.ts';
import type { Die } from '../job/kinds/die.ts';
import { remembered } from '../remembered.ts';
import { radiusAt } from '../solve/bending.ts';
import { roundCorners } from '../solve/centreline.ts';
import type { SolvedTube } from '../solve/types.ts';

/** The tube laid out with the die's own radius, or with the one that the pulls say; its ends and its mass stay. The same tube where it is straight. */
export function laidOutBy(tube: SolvedTube, radius: Die['radius']): SolvedTube {
  const { section, pullLaw: law } = tube;
  if (tube.die === null) return tube;
  const die = { ...tube.die, radius };
  const line = roundCorners(tube.corners, radiusAt({ die, section, law }));
  const blankLength = tube.blankLength + line.developedLength - tube.developedLength;
  return { ...tube, ...line, die, blankLength };
}

/**
 * The tube that is bent in the run: as it is drawn, also where it stands in the frame as it came out. One that is cut is held with the radii of that
 * day; what is not bent of it yet goes by those of today.
 */
export function toBeBent(tube: SolvedTube, run: BentTube | undefined): SolvedTube {
  if (run === undefined) return tube;
  const drawn = run.stands ? (tube.asDrawn ?? tube) : tube;
  return drawn.held === null ? drawn : laidOutToday(drawn);
}

const laidOutToday = remembered((tube: SolvedTube) => laidOutBy(tube, tube.die?.radius ?? 'nominal'));
