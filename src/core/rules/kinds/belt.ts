/**
 * The belt from a shoulder over a bar behind it: straight back, in the upright plane along the car through the shoulder, until it lies on top of the bar. Of
 * all lines in that plane from the shoulder those that meet the bar are the ones that come within its radius of its centreline; the belt is the last of them,
 * turned up. So it holds for bars that slope and that are bent, and is exact as the distance of a line from a centreline is (geometry/near-places.ts).
 */
import { toDegrees, type Degrees } from '../../geometry/angle.ts';
import { nearPlaces } from '../../geometry/near-places.ts';
import { linePiece, type LinePiece } from '../../geometry/path.ts';
import { placesInPlane } from '../../geometry/plane-places.ts';
import { ROUNDING } from '../../geometry/tolerance.ts';
import { distance, type Vec3 } from '../../geometry/vector.ts';
import type { Bar } from '../../solve/types.ts';

export interface Belt {
  /** From level, up from the shoulder to the bar counted plus. */
  readonly angle: Degrees;
  /** Where it comes to lie on the bar's wall. */
  readonly on: Vec3;
  /** The top of the bar's wall straight behind the shoulder, mm over the shoulder. */
  readonly height: number;
  /** How far behind the shoulder the bar's centreline is, mm. */
  readonly back: number;
}

/** Null where the bar does not run behind the shoulder, or touches it. */
export function beltFrom(shoulder: Vec3, bar: Pick<Bar, 'path' | 'section'>): Belt | null {
  const [x, y, z] = shoulder;
  const radius = bar.section.outerDiameter / 2;
  const behind = placesInPlane(bar.path, 1, y).filter(({ point }) => x - point[0] > ROUNDING);
  if (behind.length === 0) return null;
  const { point } = behind.reduce((a, b) => (b.point[0] > a.point[0] ? b : a));
  const [back, rise] = [x - point[0], point[2] - z];
  const long = 2 * distance(shoulder, point) + 4 * radius;
  const ray = (angle: number): LinePiece =>
    linePiece(shoulder, [x - long * Math.cos(angle), y, z + long * Math.sin(angle)], 0);
  const level = (up: number): LinePiece => linePiece([x, y, up], [x - long, y, up], 0);
  const towards = Math.atan2(rise, back);
  const angle = lastOf(ray, bar, towards, towards + QUARTER, FINEST_ANGLE);
  const top = lastOf(level, bar, point[2], point[2] + HIGHEST * radius, FINEST_HEIGHT);
  if (angle === null || top === null) return null;
  const line = ray(angle);
  return {
    angle: toDegrees(angle),
    on: landing(line, bar, radius),
    height: top - z,
    back,
  };
}

/** Radians: past a quarter turn from the bar's centreline a line leads away from the bar. */
const QUARTER = Math.PI / 2;
/** Times its radius: no bar across the car slopes so that its wall, cut upright, reaches higher over its centreline. */
const HIGHEST = 8;
/** Radians. */
const FINEST_ANGLE = 1e-12;
/** mm. */
const FINEST_HEIGHT = 1e-9;

type LineOf = (turn: number) => LinePiece;

/** The last line of them that meets the bar, the first of which does; null where the last does too. */
function lastOf(line: LineOf, bar: Pick<Bar, 'path' | 'section'>, first: number, beyond: number, finest: number) {
  let [meets, misses] = [first, beyond];
  if (isMet(line(beyond), bar)) return null;
  while (misses - meets > finest) {
    const middle = (meets + misses) / 2;
    if (isMet(line(middle), bar)) meets = middle;
    else misses = middle;
  }
  return meets;
}

function isMet(line: LinePiece, { path, section }: Pick<Bar, 'path' | 'section'>): boolean {
  let met = false;
  for (const piece of path.pieces)
    nearPlaces(piece, line, section.outerDiameter / 2, () => {
      met = true;
    });
  return met;
}

/** The place of the line nearest to the bar's centreline, which it all but touches. */
function landing(line: LinePiece, { path }: Pick<Bar, 'path'>, radius: number): Vec3 {
  let [least, along] = [Infinity, 0];
  for (const piece of path.pieces)
    nearPlaces(piece, line, radius + 1, (near) => {
      if (near.distance < least) [least, along] = [near.distance, near.alongB];
    });
  const [from, u] = [line.from, line.startTangent];
  return [from[0] + along * u[0], from[1] + along * u[1], from[2] + along * u[2]];
}
