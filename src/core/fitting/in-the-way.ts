/**
 * What the cage runs into when it stands lower: measured points, body lines and boxes that are clear of a tube where the cage belongs,
 * and not where it stands `by` lower. To lower the cage is to raise the car: the places are measured to the tubes as they are.
 *
 * Points and lines are followed all the way (swept.ts), and boxes that stand upright; a box that leans is measured where it is at last. Where a
 * tube stands on the car nothing counts, as with gaps to the trim. Exact as those gaps are (docs/maths/trim.md, clearance.md).
 */
import { gapToBox } from '../gaps/box-gap.ts';
import { outsideOf, type Outside } from '../gaps/outside.ts';
import { gapToStretch, type Stretch } from '../gaps/stretch-gap.ts';
import type { Trim, TrimPlace } from '../gaps/trim-places.ts';
import { boxesOf, meet } from '../gaps/tube-boxes.ts';
import { boxRound } from '../geometry/box-tree.ts';
import type { SolidBox } from '../geometry/solid-box.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import { addScaled, equal, Z_AXIS, type Vec3 } from '../geometry/vector.ts';
import type { EnvelopeId, TubeRef } from '../job/reference.ts';
import { envelopeBox } from '../solve/envelope-box.ts';
import type { Frame, SolvedTube } from '../solve/types.ts';
import { sweptBy } from './swept.ts';

/** A tube that runs into something of the car. */
export interface InTheWay {
  readonly tube: TubeRef;
  readonly of: Trim | { readonly kind: 'envelope'; readonly id: EnvelopeId };
  /** How deep, mm. */
  readonly deep: number;
}

/** The deepest first. */
export function inTheWay(
  { job, tubes }: Pick<Frame, 'job' | 'tubes'>,
  places: readonly TrimPlace[],
  by: number,
): readonly InTheWay[] {
  if (by <= 0) return [];
  const ofCar = places.flatMap(({ trim, stretches }) =>
    tubes.flatMap((tube): InTheWay | readonly [] => {
      const deep = Math.max(0, ...stretches.map((stretch) => depthBelow(tube, stretch, by)));
      return deep > 0 ? { tube: tube.id, of: trim, deep } : [];
    }),
  );
  const ofBoxes = job.envelopes.flatMap((envelope) => {
    // Nobody sits in the car while the cage is fitted.
    if (envelope.kind === 'driver') return [];
    const before = envelopeBox(job.points, envelope);
    const { centre, half, axes } = before;
    // An upright box sweeps a higher one.
    const raised: SolidBox = equal(axes[2], Z_AXIS)
      ? { centre: up(centre, by / 2), half: [half[0], half[1], half[2] + by / 2], axes }
      : { centre: up(centre, by), half, axes };
    const round = boxRound([raised.centre], Math.hypot(...raised.half));
    return tubes.flatMap((tube): InTheWay | readonly [] => {
      if (!boxesOf(tube).some((box) => meet(box, round, 0))) return [];
      const outside = outsideOf(tube);
      const { distance } = gapToBox(outside, raised);
      if (distance >= -ROUNDING || gapToBox(outside, before).distance < -ROUNDING) return [];
      return { tube: tube.id, of: { kind: 'envelope', id: envelope.id }, deep: -distance };
    });
  });
  return [...ofCar, ...ofBoxes].toSorted((a, b) => b.deep - a.deep);
}

const up = (p: Vec3, by: number): Vec3 => addScaled(p, Z_AXIS, by);

/** How deep the stretch comes into the tube that is lowered, mm; 0 where it does not, and where it lies in it already. */
function depthBelow(tube: SolvedTube, stretch: Stretch, by: number): number {
  const { from, to } = stretch;
  const round = boxRound([from, to, up(from, by), up(to, by)], 0);
  if (!boxesOf(tube).some((box) => meet(box, round, 0))) return 0;
  const outside = outsideOf(tube);
  if (depthOf(outside, stretch) > 0) return 0;
  return Math.max(...sweptBy(stretch, by, outside.pieces).map((each) => depthOf(outside, each)));
}

function depthOf(outside: Outside, stretch: Stretch): number {
  const gap = gapToStretch(outside, stretch, 0);
  return gap !== null && gap.distance < -ROUNDING ? -gap.distance : 0;
}
