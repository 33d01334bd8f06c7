/** The least distance between two straight strokes, in plain numbers that are lent: a search asks this a hundred thousand times. */

/** Where on each stroke the last answer was: 0 where it begins, 1 where it ends. */
export const shares = { first: 0, second: 0 };

const clamped = (share: number): number => (share < 0 ? 0 : share > 1 ? 1 : share);

/**
 * mm, between two strokes, each the x, y, z that it begins at and those that it ends at. The lines' own nearest places where both lie on the
 * strokes; else one of them is at an end, and the other is the place nearest to it.
 */
export function distanceOfStrokes(first: Float64Array, second: Float64Array): number {
  const [ux, uy, uz] = [first[3]! - first[0]!, first[4]! - first[1]!, first[5]! - first[2]!];
  const [vx, vy, vz] = [second[3]! - second[0]!, second[4]! - second[1]!, second[5]! - second[2]!];
  const [wx, wy, wz] = [first[0]! - second[0]!, first[1]! - second[1]!, first[2]! - second[2]!];
  const uu = ux * ux + uy * uy + uz * uz;
  const vv = vx * vx + vy * vy + vz * vz;
  const uv = ux * vx + uy * vy + uz * vz;
  const uw = ux * wx + uy * wy + uz * wz;
  const vw = vx * wx + vy * wy + vz * wz;
  const square = uu * vv - uv * uv;
  const across = square > 0 ? clamped((uv * vw - vv * uw) / square) : 0;
  const t = vv > 0 ? clamped((uv * across + vw) / vv) : 0;
  const s = uu > 0 ? clamped((uv * t - uw) / uu) : 0;
  shares.first = s;
  shares.second = t;
  const [x, y, z] = [wx + s * ux - t * vx, wy + s * uy - t * vy, wz + s * uz - t * vz];
  return Math.sqrt(x * x + y * y + z * z);
}
