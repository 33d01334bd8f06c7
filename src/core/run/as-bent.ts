/** The tube as it was bent, end A's node held and the plane of bend 1; its check dimensions, and where its other end comes to lie. */
import { distance, type Vec3 } from '../geometry/vector.ts';
import type { BentTube } from '../job/kinds/bent.ts';
import { beyondNode } from '../solve/amount.ts';
import { asBuilt, laidDown, type BuiltTube, type OnBlank, type RadiusMade } from '../solve/as-built.ts';
import { rolledCentreline, startOf } from '../solve/rolled-centreline.ts';
import type { SolvedTube } from '../solve/types.ts';
import { checkDimensions, type CheckDimension } from './check-dimensions.ts';
import { sawn, type SawnTube } from './sawn-tube.ts';

export interface AsBent extends BuiltTube {
  /** End A's node held, and the plane of bend 1. */
  readonly form: SawnTube;
  readonly checks: readonly CheckDimension[];
  /** Where end B's node comes to lie, car axes, and how far that is from its place, mm. */
  readonly endB: Vec3;
  readonly endMoves: number;
}

/** What of it was not measured is as the tube is laid out, but for how it lies on its blank. As asBuilt, with the radii that were laid down unless said. */
export function asBent(
  tube: SolvedTube,
  run: Pick<BentTube, 'order' | 'bends'>,
  blank?: OnBlank,
  radiusOf: RadiusMade = laidDown(tube.die),
): AsBent {
  const built = asBuilt(tube, radiusOf, run, blank);
  const { path, corners } = rolledCentreline(startOf(tube), built);
  const form = { pieces: sawn(path.pieces, tube.ends.map(beyondNode)), outerDiameter: tube.section.outerDiameter };
  const endB = corners.at(-1)!;
  return {
    ...built,
    form,
    checks: checkDimensions(form),
    endB,
    endMoves: distance(endB, tube.corners.at(-1)!),
  };
}
