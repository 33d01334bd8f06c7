/** Which radius the marks of a run can follow where the log of pulls says that bends open, and what each makes of the finished tube. */
import { toDegrees } from '../geometry/angle.ts';
import type { BentTube } from '../job/kinds/bent.ts';
import type { Die } from '../job/kinds/die.ts';
import { NOTABLE_LENGTH, type TapeSetting } from '../marks/tape.ts';
import type { SolvedTube } from '../solve/types.ts';
import { bearsAll, bornePull } from '../springback/pull-advice.ts';
import { asBent } from './as-bent.ts';
import type { CheckDimension } from './check-dimensions.ts';
import { laidOutBy } from './laid-out.ts';
import { widthOf } from './opened.ts';
import { bendRun } from './run.ts';

export interface RadiusAnswer {
  readonly radius: Die['radius'];
  /** Least and greatest that the marks then go by, mm. */
  readonly radii: readonly [number, number];
  /** How far end B of the finished tube lies from its place, end A held, mm. */
  readonly endMoves: number;
  /** Its overall width, and how much more that is than of the tube as it is laid out, mm; below zero where it is less. */
  readonly width: CheckDimension;
  readonly wider: number;
}

/**
 * The die's own first. Each bend that is made counts as it was read, each other as the log says it comes out: at its angle, pulled to what the law
 * asks. Null where the log does not bear that for every bend, and where no tape shows a difference. `tube` as toBeBent, `run` as far as it is.
 */
export function radiusAnswers(
  tube: SolvedTube,
  run: BentTube,
  setting: TapeSetting,
): readonly [own: RadiusAnswer, pulls: RadiusAnswer] | null {
  const law = tube.pullLaw;
  if (law === null || tube.bends.length === 0 || !bearsAll(tube)) return null;
  const answer = (radius: Die['radius']): RadiusAnswer => {
    const laid = laidOutBy(tube, radius);
    const read = laid.bends.map(
      ({ angle }, i) =>
        run.bends.find(({ bend }) => bend === i + 1) ?? {
          bend: i + 1,
          pulled: toDegrees(bornePull(law, angle)),
          net: toDegrees(angle),
        },
    );
    const bent = bendRun(laid, { ...run, bends: read }, setting).asBent;
    const [width, planned] = [widthOf(bent), widthOf(asBent(laid, { order: run.order, bends: [] }))];
    const radii = laid.bends.map((bend) => bend.radius);
    return {
      radius,
      radii: [Math.min(...radii), Math.max(...radii)],
      endMoves: bent.endMoves,
      width,
      wider: width.value - planned.value,
    };
  };
  const [own, pulls] = [answer('nominal'), answer('from-pulls')];
  const differ = [own.endMoves - pulls.endMoves, own.wider - pulls.wider].some((by) => Math.abs(by) > NOTABLE_LENGTH);
  return differ ? [own, pulls] : null;
}
