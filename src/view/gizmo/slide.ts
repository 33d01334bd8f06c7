/** Following a pointer along a tube's centreline, round its bends. */
import { dot } from '../../core/geometry/vector.ts';
import type { Projection } from '../camera/projection.ts';
import type { Host } from '../../core/shape/free-directions.ts';

const STEPS = 24;
/** mm a step: small against any bend, so that the walk follows the tube and never jumps to a leg that it crosses on the screen. */
const STRIDE = 60;

/**
 * Developed length, within the tube, that looks nearest to pixel (x, y) for one who walks there from `at` along the
 * tube. Where the tube points at the eye nothing is gained by walking: the walk stops there.
 */
export function slideAlong(host: Host, view: Projection, at: number, x: number, y: number): number {
  let here = at;
  for (let i = 0; i < STEPS; i += 1) {
    const { point, tangent } = host.placeAt(here);
    const seen = view.toScreen(point);
    const ux = dot(tangent, view.right);
    const uy = -dot(tangent, view.up);
    const square = ux * ux + uy * uy;
    if (square < 0.01) return here;
    const wanted = ((x - seen.x) * ux + (y - seen.y) * uy) / square / view.pixelsPerMm;
    const next = Math.min(host.length, Math.max(0, here + Math.min(STRIDE, Math.max(-STRIDE, wanted))));
    if (Math.abs(next - here) < 0.01) return next;
    here = next;
  }
  return here;
}
