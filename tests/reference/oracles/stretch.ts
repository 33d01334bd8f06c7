/**
 * How far a straight stretch, or a place, is from a coped tube, by searching alone: its outside in sampled places, walls, flat cuts and the
 * hollows of copes to one straight run, each line trimmed by the textbook's quadratic (ray.ts), the best of them improved by small random steps. So never nearer than the truth.
 */
import { distanceToCentreline } from './centreline.ts';
import type { CopedSolid } from './coped.ts';
import { trimByRay } from './ray.ts';
import type { Draw } from './seeded.ts';
import { along, around, difference, inner, size, type Triple } from './space.ts';

/** mm from p to the stretch. */
export function offStretch(p: Triple, from: Triple, to: Triple): number {
  const way = difference(to, from);
  const square = inner(way, way);
  const share = square > 0 ? Math.min(1, Math.max(0, inner(difference(p, from), way) / square)) : 0;
  return size(difference(p, along(from, way, share)));
}

const STEP = 4;

/** The least distance to the outside; of a stretch that comes into the tube, minus the depth of its deepest place. */
export function leastToStretch(tube: CopedSolid, from: Triple, to: Triple, draw: Draw): number {
  const deepest = deepestOn(tube, from, to);
  if (deepest < 0) return deepest;
  const off = (p: Triple): number => offStretch(p, from, to);
  const spots = tube.spots(STEP, () => true).map((spot) => ({ spot, value: off(tube.place(spot)) }));
  spots.sort((one, other) => one.value - other.value);
  let least = Infinity;
  const tried: Triple[] = [];
  for (const { spot, value } of spots) {
    if (tried.length === 8 || value > least + 2 * STEP) break;
    const at = tube.place(spot);
    if (tried.some((each) => size(difference(each, at)) < 2 * STEP)) continue;
    tried.push(at);
    least = Math.min(least, tube.descend(spot, STEP, off, draw).value);
  }
  for (const which of [0, 1] as const) least = Math.min(least, leastToHollow(tube, which, off, least, draw));
  return least;
}

/** In the hollow of an end's cope, on lines along the tube between its axis and its wall. */
function leastToHollow(tube: CopedSolid, which: 0 | 1, off: (p: Triple) => number, below: number, draw: Draw): number {
  const end = tube.coped.ends[which];
  if (end.cutters.length === 0) return Infinity;
  if (off(end.node) > below + 4 * tube.coped.radius) return Infinity;
  const value = (rho: number, phi: number): number => {
    const s = trimByRay({ ...end, radius: rho })(phi) ?? end.tip;
    return off(along(along(end.node, around(end.direction, end.reference, phi), rho), end.direction, s));
  };
  let best = { value: Infinity, rho: 0, phi: 0 };
  for (let rho = 0; rho <= end.radius; rho += end.radius / 5) {
    for (let phi = 0; phi < 360; phi += 20) {
      const here = value(rho, phi);
      if (here < best.value) best = { value: here, rho, phi };
    }
  }
  for (let step = 1, missed = 0; step > 1e-3;) {
    const rho = Math.min(end.radius, Math.max(0, best.rho + (draw.between(-step, step) * end.radius) / 5));
    const phi = best.phi + draw.between(-step, step) * 20;
    const here = value(rho, phi);
    if (here < best.value) [best, missed] = [{ value: here, rho, phi }, 0];
    else if (++missed > 12) [missed, step] = [0, step / 2];
  }
  return best.value;
}

/** Looked along in steps of a fifth of a mm, and on from the deepest; 0 where none is inside. */
function deepestOn(tube: CopedSolid, from: Triple, to: Triple): number {
  const way = difference(to, from);
  const count = Math.ceil(size(way) / 0.2);
  let [least, at] = [0, 0];
  const depth = (share: number): number => {
    const p = along(from, way, share);
    return distanceToCentreline(tube.axis, p) < tube.coped.radius ? tube.depth(p) : 0;
  };
  for (let k = 0; k <= count; k++) {
    const here = depth(count === 0 ? 0 : k / count);
    if (here < least) [least, at] = [here, count === 0 ? 0 : k / count];
  }
  for (let step = count === 0 ? 0 : 1 / count; step * size(way) > 1e-4; step /= 2) {
    for (const next of [at - step, at + step]) {
      if (next < 0 || next > 1) continue;
      const here = depth(next);
      if (here < least) [least, at] = [here, next];
    }
  }
  return least;
}
