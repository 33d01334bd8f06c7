/** Where on the bent tube each check dimension is taken: the two places that the tape goes by, and the way it lies. */
import type { ArcPiece } from '../geometry/path.ts';
import { addScaled, cross, dot, normalize, scale, subtract, type Vec3 } from '../geometry/vector.ts';
import { measuredAlong, type CheckDimension } from './check-dimensions.ts';
import { farthestOf, type SawnTube } from './sawn-tube.ts';

/** (to - from) . along is the dimension's value, mm; what the places lie aside of one another the tape does not see. */
export interface CheckPlaces {
  readonly from: Vec3;
  readonly to: Vec3;
  /** Unit vector. */
  readonly along: Vec3;
}

/** Of a bent tube's own dimension. What stands off is taken from the plane of the first bend, as the tube lies on the bench. */
export function checkPlaces({ pieces, outerDiameter }: SawnTube, { id, lies }: CheckDimension): CheckPlaces {
  const arcs = pieces.filter((piece): piece is ArcPiece => piece.kind === 'arc');
  const [first, last] = [arcs[0]!, arcs.at(-1)!];
  const [endA, endB] = [pieces[0]!, pieces.at(-1)!];
  const over = (along: Vec3): CheckPlaces => ({
    from: farthestOf(pieces, outerDiameter / 2, scale(along, -1)),
    to: farthestOf(pieces, outerDiameter / 2, along),
    along,
  });
  const across = (from: Vec3, to: Vec3): CheckPlaces => ({ from, to, along: normalize(subtract(to, from)) });
  const outside = (from: Vec3, tangentFrom: Vec3, to: Vec3, tangentTo: Vec3): CheckPlaces => {
    const { along } = across(from, to);
    const beyond = (tangent: Vec3) => (outerDiameter / 2) * Math.sqrt(Math.max(0, 1 - dot(tangent, along) ** 2));
    return {
      from: addScaled(from, along, -beyond(tangentFrom)),
      to: addScaled(to, along, beyond(tangentTo)),
      along,
    };
  };
  switch (id) {
    case 'width':
      return over(measuredAlong(pieces)!);
    case 'height':
      return over(cross(first.normal, measuredAlong(pieces)!));
    case 'legs-at-ends':
      return outside(endA.from, endA.startTangent, endB.to, endB.endTangent);
    case 'legs-at-bends':
      return outside(first.from, first.startTangent, last.to, last.endTangent);
    case 'chord':
      return across(endA.from, endB.to);
    case 'diagonal-a':
      return across(endA.from, last.to);
    case 'diagonal-b':
      return across(endB.to, first.from);
    case 'stands-off': {
      const up = upOnBench(first, lies);
      const to = lies.highest === 'end-b' ? endB.to : farthestOf(pieces, 0, up);
      return { from: addScaled(to, up, -dot(subtract(to, first.from), up)), to, along: up };
    }
  }
}

/** The way up where the tube lies on the plane of its first bend, the place that stands off it the most above the bench. */
export const upOnBench = ({ normal }: ArcPiece, { turns }: CheckDimension['lies']): Vec3 =>
  turns === 'left' ? normal : scale(normal, -1);
