/**
 * The plane that an end is cut to, where it is cut to one: of a plate through the node, of a foot its upper face, of a mitre the plane between
 * the two axes, which each tube meets at half the angle between them (common practice).
 */
import { ANGLE_ROUNDING, ROUNDING } from '../geometry/tolerance.ts';
import { distance, dot, equal, length, mirrored, normalize, subtract, type Vec3 } from '../geometry/vector.ts';
import type { EndFit } from '../job/kinds/end.ts';
import { heightOf, type Foot } from '../job/kinds/foot.ts';
import type { Section } from '../job/kinds/section.ts';
import type { FootId } from '../job/reference.ts';
import type { LaidBar } from './lay-out.ts';
import type { TubeEnd, Unmitred } from './types.ts';

export interface EndPlane {
  /** Null where no plane cuts the end. */
  readonly fit: Extract<TubeEnd['fit'], 'plate' | 'foot' | 'mitre'> | null;
  /** As the job gives it, of a twin its image; of a mitre a unit vector from the other tube towards this one. */
  readonly normal: Vec3 | null;
  /** From the node to the plane, mm along the tube into it. */
  readonly rise: number;
  readonly foot: Foot | null;
  readonly unmitred: Unmitred | null;
}

/** Of an end that no plane cuts. */
export const NO_PLANE: EndPlane = { fit: null, normal: null, rise: 0, foot: null, unmitred: null };

/** What the end's plane depends on beside its fit. `direction` is the unit direction into the tube at its end. */
export interface PlaneContext {
  readonly direction: Vec3;
  readonly outerDiameter: number;
  readonly twin: boolean;
  readonly feet: ReadonlyMap<FootId, Foot>;
  /** The tube that a mitre names, as this one sees it; null where it has no end there. */
  readonly mate: Mate | null;
}

/** The other tube of a mitre: its unit direction into it at their node. */
export interface Mate {
  readonly direction: Vec3;
  readonly section: Section;
}

/** The plane of an end; of a foot that the tube runs along it has no place, and a rise of 0. */
export function endPlane(spec: EndFit, { direction, outerDiameter, twin, feet, mate }: PlaneContext): EndPlane {
  const turned = (normal: Vec3): Vec3 => (twin ? mirrored(normal) : normal);
  switch (spec.fit) {
    case 'plate':
      return { ...NO_PLANE, fit: 'plate', normal: turned(spec.normal) };
    case 'foot': {
      const normal = turned(spec.normal);
      const foot = feet.get(spec.foot)!;
      const along = dot(normalize(normal), direction);
      const rise = Math.abs(along) <= ANGLE_ROUNDING ? 0 : heightOf(foot) / along;
      return { ...NO_PLANE, fit: 'foot', normal, rise, foot };
    }
    case 'mitre': {
      if (mate === null) return { ...NO_PLANE, unmitred: 'no-end-there' };
      if (Math.abs(mate.section.outerDiameter - outerDiameter) > ROUNDING) return { ...NO_PLANE, unmitred: 'unlike' };
      const between = subtract(direction, mate.direction);
      if (length(between) <= ANGLE_ROUNDING) return { ...NO_PLANE, unmitred: 'folded' };
      return { ...NO_PLANE, fit: 'mitre', normal: normalize(between) };
    }
    default:
      return NO_PLANE;
  }
}

/** Which end of the bar stands at this place, 0 for A and 1 for B; null where neither does. */
export function endThere({ centreline: { corners } }: LaidBar, place: Vec3): 0 | 1 | null {
  const at = [corners[0]!, corners.at(-1)!].findIndex((corner) => distance(corner, place) <= ROUNDING);
  return at === -1 ? null : (at as 0 | 1);
}

/** Whether the end was cut to this plane, or like it to none. What it was asked to be is compared by others. */
export const samePlane = (a: EndPlane, { plateNormal, cutter, foot, unmitred }: TubeEnd): boolean =>
  a.rise === cutter.rise &&
  a.foot === foot &&
  a.unmitred === unmitred &&
  (a.normal === null || plateNormal === null ? a.normal === plateNormal : equal(a.normal, plateNormal));
