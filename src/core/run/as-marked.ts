/**
 * A tube as its marks were drawn: the radii of the day its run began, worked back from where its bends then started.
 *
 * From end A each corner's leg leaves the set-back, R tan(angle/2), over from where the bend starts; the arc R angle says where the
 * next one is counted from. The marks are held to this while the pulls at hand cannot tell slack from spring: one small pull would
 * open the radius far too wide, and move marks that the next pull moves back.
 */
import { toRadians } from '../geometry/angle.ts';
import { addScaled, subtract } from '../geometry/vector.ts';
import type { DrawnTube } from '../job/kinds/bent.ts';
import type { Bend, SolvedTube } from '../solve/types.ts';
import { tellsSlackFromSpring } from '../springback/pull-law.ts';

/** Whether the marks stay as drawn, whatever radius the pulls now give. */
export const holdsMarks = ({ die, pullLaw }: SolvedTube): boolean =>
  die?.radius === 'from-pulls' && (pullLaw === null || !tellsSlackFromSpring(pullLaw));

/**
 * Bends, straights, developed and blank length as they were then, and the clamp's offset; the path and the mass stay those of now. The
 * same tube where it was not kept where its bends started, and where that can be true of no radius.
 */
export function asMarked(tube: SolvedTube, drawn: DrawnTube | undefined): SolvedTube {
  const starts = drawn?.starts;
  if (drawn === undefined || starts?.length !== tube.bends.length || tube.bends.length === 0) return tube;
  const { legs, angles } = drawn;
  if (legs.length !== starts.length + 1 || angles.length !== starts.length) return tube;

  const straights: number[] = [];
  let [end, setBack] = [0, 0];
  const bends = tube.bends.map((bend, i): Bend => {
    const angle = toRadians(angles[i]!);
    const start = starts[i]!;
    straights.push(start - end);
    setBack = legs[i]! - setBack - (start - end);
    const radius = setBack / Math.tan(angle / 2);
    const arc = radius * angle;
    end = start + arc;
    // On the line that halves the corner, as far out as the radius is larger.
    const centre = addScaled(bend.corner, subtract(bend.centre, bend.corner), radius / bend.radius);
    return { ...bend, angle, radius, setBack, arc, start, end, centre };
  });
  if (!bends.every(({ radius }) => radius > 0 && Number.isFinite(radius))) return tube;
  const last = legs.at(-1)! - setBack;
  const developedLength = end + last;
  const die = tube.die && { ...tube.die, clampOffset: drawn.die?.clampOffset ?? tube.die.clampOffset };
  return {
    ...tube,
    die,
    bends,
    straights: [...straights, last],
    developedLength,
    blankLength: tube.blankLength + developedLength - tube.developedLength,
  };
}
