/**
 * A tube as its marks were drawn: the radii of the day its run began, worked back from where its bends then started.
 *
 * From end A each corner's leg leaves the set-back, R tan(angle/2), over from where the bend starts; the arc R angle says where the
 * next one is counted from. The marks are held to this while the pulls at hand cannot tell slack from spring: one small pull would
 * open the radius far too wide, and move marks that the next pull moves back.
 */
import { addScaled, subtract } from '../geometry/vector.ts';
import type { DrawnTube } from '../job/kinds/bent.ts';
import { asDrawnThen } from '../solve/as-built.ts';
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
  if (drawn?.starts?.length !== tube.bends.length || tube.bends.length === 0) return tube;
  const then = asDrawnThen(drawn, tube.die!.centrelineRadius);
  if (then === null) return tube;
  const bends = then.bends.map((planned, i): Bend => {
    const bend = tube.bends[i]!;
    const { radius } = planned;
    return {
      ...bend,
      ...planned,
      rotation: bend.rotation,
      setBack: radius * Math.tan(planned.angle / 2),
      arc: radius * planned.angle,
      // On the line that halves the corner, as far out as the radius is larger.
      centre: addScaled(bend.corner, subtract(bend.centre, bend.corner), radius / bend.radius),
    };
  });
  const { developedLength } = then;
  const straights = [...bends, null].map((bend, i) => (bend?.start ?? developedLength) - (bends[i - 1]?.end ?? 0));
  const die = tube.die && { ...tube.die, clampOffset: drawn.die?.clampOffset ?? tube.die.clampOffset };
  return {
    ...tube,
    die,
    bends,
    straights,
    developedLength,
    blankLength: tube.blankLength + developedLength - tube.developedLength,
  };
}
