/**
 * How a foot stands in the car: its place, its axes, and where the tube's outline stands on its upper face.
 *
 * `along` is the car's x laid onto the plate; on a plate square to x, such as one on a bulkhead, it is the car's z laid onto it, so that along is
 * up there. `across` is normal x along: on a level floor to the left. Of a twin's foot all is the mirror image, so that the same coordinates on
 * the plate hold: there `across` is minus that product.
 */
import { STRAIGHT_THROUGH } from '../geometry/tolerance.ts';
import {
  addScaled,
  cross,
  dot,
  length,
  normalize,
  rejectFrom,
  scale,
  X_AXIS,
  Z_AXIS,
  type Vec3,
} from '../geometry/vector.ts';
import { heightOf, type Foot } from '../job/kinds/foot.ts';
import { isPrimed } from '../job/reference.ts';
import { remembered } from '../remembered.ts';
import type { SolvedTube, TubeEnd } from '../solve/types.ts';
import { outlineOn, type Outline, type PlateAxes } from './outline.ts';

export interface Stand extends PlateAxes {
  readonly foot: Foot;
  readonly tube: SolvedTube;
  /** The tube's end that stands on it, A or B. */
  readonly which: 0 | 1;
  /** On the car: the middle of the face that lies on it. */
  readonly place: Vec3;
  /** A mirror image of the foot as the job has it. */
  readonly mirrored: boolean;
  /** On the upper face, from the plate's middle. Null where the tube runs along the plate, or the foot is upside down. */
  readonly outline: Outline | null;
}

/** The feet that a tube stands on, that of end A first. */
export const standsOf: (tube: SolvedTube) => readonly Stand[] = remembered((tube) =>
  tube.ends.flatMap((end, which) => {
    const stand = standAt(tube, end, which as 0 | 1);
    return stand === null ? [] : [stand];
  }),
);

function standAt(tube: SolvedTube, { foot, plateNormal, position, direction }: TubeEnd, which: 0 | 1): Stand | null {
  if (foot === null || plateNormal === null) return null;
  const mirrored = isPrimed(tube.id);
  const axes = plateAxes(plateNormal, mirrored);
  const outline = outlineOn(axes, heightOf(foot), direction, tube.section.outerDiameter / 2);
  return { foot, tube, which, place: position, mirrored, ...axes, outline };
}

/** Of a plate with this normal, of any length but 0: unit vectors; see the head of the file. */
export function plateAxes(plateNormal: Vec3, mirrored: boolean): PlateAxes {
  const normal = normalize(plateNormal);
  const forward = rejectFrom(X_AXIS, normal);
  const along = normalize(length(forward) > STRAIGHT_THROUGH ? forward : rejectFrom(Z_AXIS, normal));
  const left = cross(normal, along);
  return { normal, along, across: mirrored ? scale(left, -1) : left };
}

/** In car axes, mm: of a place on the foot, [along, across, up from the car]. */
export const inCar = ({ place, along, across, normal }: Stand, [a, c, up]: Vec3): Vec3 =>
  addScaled(addScaled(addScaled(place, along, a), across, c), normal, up);

/** The other way round, for a place in car axes. */
export function onFoot({ place, along, across, normal }: Stand, at: Vec3): Vec3 {
  const off = addScaled(at, place, -1);
  return [dot(off, along), dot(off, across), dot(off, normal)];
}
