/** The place of a scan under a pointer: where a line of sight meets it first. */
import { addScaled, cross, dot, scale, subtract, type Vec3 } from '../geometry/vector.ts';
import { directionInFile, inCar, inFile, unsigned, type Placing } from './place.ts';
import type { ScanData } from './types.ts';

/** A line of sight through a place of the car; the eye is where it points to, endlessly far. */
export interface Sightline {
  readonly through: Vec3;
  /** Unit vector. */
  readonly toEye: Vec3;
}

/** Points within this many times the reach behind the foremost one belong to the same skin of the cloud. */
const SAME_SKIN = 2;

export interface Picked {
  /** In the file's own unit and axes, and in the car. */
  readonly at: Vec3;
  readonly place: Vec3;
}

/** Of a mesh the place on its foremost triangle; of a cloud the point nearest to the line among the foremost within `reach` mm. Null where there is none. */
export function pickOn(data: ScanData, placing: Placing, sight: Sightline, reach: number): Picked | null {
  const from = inFile(placing, sight.through);
  const along = directionInFile(placing, sight.toEye);
  const found = data.kind === 'triangles' ? onMesh(data, from, along) : onCloud(data, from, along, reach / placing.mm);
  if (found === null) return null;
  const at = unsigned(found);
  return { at, place: unsigned(inCar(placing, at)) };
}

/** Seen along the line, its place lies in a triangle whose three edges all turn the same way round it. */
function onMesh({ positions, triangles }: ScanData, from: Vec3, along: Vec3): Vec3 | null {
  const right = cross(along, Math.abs(along[0]) < Math.abs(along[1]) ? [1, 0, 0] : [0, 1, 0]);
  const u = scale(right, 1 / Math.hypot(...right));
  const v = cross(along, u);
  const count = positions.length / 3;
  const seen = new Float64Array(3 * count);
  for (let i = 0; i < count; i++) {
    const x = positions[3 * i]! - from[0];
    const y = positions[3 * i + 1]! - from[1];
    const z = positions[3 * i + 2]! - from[2];
    seen[3 * i] = u[0] * x + u[1] * y + u[2] * z;
    seen[3 * i + 1] = v[0] * x + v[1] * y + v[2] * z;
    seen[3 * i + 2] = along[0] * x + along[1] * y + along[2] * z;
  }
  let nearest = -Infinity;
  for (let at = 0; at < triangles.length; at += 3) {
    const [a, b, c] = [3 * triangles[at]!, 3 * triangles[at + 1]!, 3 * triangles[at + 2]!];
    const [ax, ay, bx, by, cx, cy] = [seen[a]!, seen[a + 1]!, seen[b]!, seen[b + 1]!, seen[c]!, seen[c + 1]!];
    const [p, q, r] = [bx * cy - by * cx, cx * ay - cy * ax, ax * by - ay * bx];
    const isIn = (p >= 0 && q >= 0 && r >= 0) || (p <= 0 && q <= 0 && r <= 0);
    const whole = p + q + r;
    if (!isIn || whole === 0) continue;
    const depth = (p * seen[a + 2]! + q * seen[b + 2]! + r * seen[c + 2]!) / whole;
    if (depth > nearest) nearest = depth;
  }
  return nearest === -Infinity ? null : addScaled(from, along, nearest);
}

function onCloud({ positions }: ScanData, from: Vec3, along: Vec3, reach: number): Vec3 | null {
  const near: { readonly at: Vec3; readonly depth: number; readonly off: number }[] = [];
  for (let i = 0; i < positions.length; i += 3) {
    const at: Vec3 = [positions[i]!, positions[i + 1]!, positions[i + 2]!];
    const arm = subtract(at, from);
    const depth = dot(arm, along);
    const off = Math.hypot(...addScaled(arm, along, -depth));
    if (off <= reach) near.push({ at, depth, off });
  }
  const front = near.reduce((most, { depth }) => Math.max(most, depth), -Infinity);
  const skin = near.filter(({ depth }) => depth >= front - SAME_SKIN * reach);
  return skin.length === 0 ? null : skin.reduce((a, b) => (b.off < a.off ? b : a)).at;
}
