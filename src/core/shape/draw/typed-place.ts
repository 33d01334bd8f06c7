/**
 * Where the next place of a drawn tube lies by numbers that a person types: the length of the leg, its angle to level, the height of its far
 * end. What is not typed is as the pointer has it: the heading, seen from above, always; the slope, or the length.
 *
 * Of the three any two say all that the heading leaves open. Car axes, mm.
 */
import { toRadians, type Degrees } from '../../geometry/angle.ts';
import { ROUNDING } from '../../geometry/tolerance.ts';
import { addScaled, normalize, subtract, type Vec3 } from '../../geometry/vector.ts';

export interface TypedNumbers {
  readonly length: number | null;
  /** Above level, -90..90. */
  readonly slope: Degrees | null;
  /** z above the datum. */
  readonly height: number | null;
}

export type TypedTrouble =
  /** All three are typed. */
  | 'too-many'
  /** Nothing is aimed at that would give a direction. */
  | 'no-direction'
  /** No length, or one below nothing. */
  | 'no-length'
  /** More than plumb. */
  | 'too-steep'
  /** The height is farther off than the leg is long. */
  | 'too-short'
  /** A level leg never comes to another height, or this slope leads the other way. */
  | 'never-there'
  /** Level, and at that height already: the length is open. */
  | 'level-there'
  /** It begins at that height and leaves it at once. */
  | 'begins-there';

/**
 * The place; or why there is none.
 *
 * @param from the place before
 * @param toward what is aimed at; null where nothing is
 */
export function typedPlace(from: Vec3, toward: Vec3 | null, typed: TypedNumbers): Vec3 | TypedTrouble {
  const { length, slope, height } = typed;
  if (length !== null && slope !== null && height !== null) return 'too-many';
  if (length !== null && length <= ROUNDING) return 'no-length';
  if (slope !== null && Math.abs(slope) > 90) return 'too-steep';
  const way = toward === null ? null : subtract(toward, from);
  const span = way === null ? 0 : Math.hypot(...way);
  if (way === null || span <= ROUNDING) return 'no-direction';
  if (slope === null && height === null) return addScaled(from, normalize(way), length ?? span);

  const flat = Math.hypot(way[0], way[1]);
  // Plumb up or down has no heading: it counts as forward, as an angle finder laid along the car would have it.
  const heading: Vec3 = flat <= ROUNDING ? [1, 0, 0] : [way[0] / flat, way[1] / flat, 0];
  const at = (out: number, up: number): Vec3 => [
    from[0] + heading[0] * out,
    from[1] + heading[1] * out,
    height ?? from[2] + up,
  ];
  if (height === null) {
    const [out, up] = along(slope!);
    return at((length ?? span) * out, (length ?? span) * up);
  }
  const rise = height - from[2];
  if (slope !== null) {
    const [out, up] = along(slope);
    if (Math.abs(rise) <= ROUNDING) return Math.abs(up) <= ROUNDING ? 'level-there' : 'begins-there';
    if (Math.abs(up) <= ROUNDING || rise / up <= ROUNDING) return 'never-there';
    return at((rise / up) * out, rise);
  }
  if (length === null)
    return flat <= ROUNDING && Math.abs(rise) <= ROUNDING ? 'no-length' : at(flat <= ROUNDING ? 0 : flat, rise);
  if (Math.abs(rise) > length + ROUNDING) return 'too-short';
  return at(Math.sqrt(Math.max(0, length * length - rise * rise)), rise);
}

/** Out and up for each mm of such a leg; level and plumb are so to the last digit. */
function along(slope: Degrees): readonly [out: number, up: number] {
  if (Math.abs(slope) === 90) return [0, Math.sign(slope)];
  return [Math.cos(toRadians(slope)), Math.sin(toRadians(slope))];
}
