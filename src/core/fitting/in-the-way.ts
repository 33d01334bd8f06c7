/**
 * What the cage runs into when it stands lower: measured points, body lines and envelopes that are clear of a tube where the cage belongs,
 * and not where it stands `by` lower. To lower the cage is to raise the car: the places are measured to the tubes as they are.
 *
 * A point is followed all the way, as the straight stretch that it takes; lines and boxes are measured where they are at last. Where a tube
 * stands on the car nothing counts, as with gaps to the trim. Exact as those gaps are (docs/maths/trim.md, clearance.md).
 */
import { gapToBox } from '../gaps/box-gap.ts';
import { outsideOf } from '../gaps/outside.ts';
import { gapToStretch, stretchBetween, type Stretch } from '../gaps/stretch-gap.ts';
import type { Trim, TrimPlace } from '../gaps/trim-places.ts';
import { boxesOf, meet } from '../gaps/tube-boxes.ts';
import { toRadians } from '../geometry/angle.ts';
import { boxRound } from '../geometry/box-tree.ts';
import { boxFrame } from '../geometry/solid-box.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import { addScaled, Z_AXIS, type Vec3 } from '../geometry/vector.ts';
import type { EnvelopeId, TubeRef } from '../job/reference.ts';
import type { Frame, SolvedTube } from '../solve/types.ts';

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
  const up = (p: Vec3): Vec3 => addScaled(p, Z_AXIS, by);
  const ofCar = places.flatMap(({ trim, stretches }) =>
    tubes.flatMap((tube): InTheWay | readonly [] => {
      const depths = stretches.flatMap((stretch) => {
        const raised = stretchBetween(stretch.line === null ? stretch.from : up(stretch.from), up(stretch.to));
        const deep = depthOf(tube, raised);
        return deep > 0 && depthOf(tube, stretch) === 0 ? [deep] : [];
      });
      return depths.length === 0 ? [] : { tube: tube.id, of: trim, deep: Math.max(...depths) };
    }),
  );
  const ofBoxes = job.envelopes.flatMap(({ id, centre, size, rotation: [rx, ry, rz] }) => {
    const boxAt = (at: Vec3) => boxFrame(at, size, [toRadians(rx), toRadians(ry), toRadians(rz)]);
    const [before, raised] = [boxAt(centre), boxAt(up(centre))];
    const round = boxRound([raised.centre], Math.hypot(...raised.half));
    return tubes.flatMap((tube): InTheWay | readonly [] => {
      if (!boxesOf(tube).some((box) => meet(box, round, 0))) return [];
      const outside = outsideOf(tube);
      const { distance } = gapToBox(outside, raised);
      if (distance >= -ROUNDING || gapToBox(outside, before).distance < -ROUNDING) return [];
      return { tube: tube.id, of: { kind: 'envelope', id }, deep: -distance };
    });
  });
  return [...ofCar, ...ofBoxes].toSorted((a, b) => b.deep - a.deep);
}

/** How deep the stretch lies in the tube, mm; 0 where it does not. */
function depthOf(tube: SolvedTube, stretch: Stretch): number {
  const round = boxRound([stretch.from, stretch.to], 0);
  if (!boxesOf(tube).some((box) => meet(box, round, 0))) return 0;
  const gap = gapToStretch(outsideOf(tube), stretch, 0);
  return gap !== null && gap.distance < -ROUNDING ? -gap.distance : 0;
}
