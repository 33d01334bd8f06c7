/**
 * Where a line leaves straight runs, each prolonged without end, by the textbook's quadratic for a line and a cylinder in
 * space: |((p - q) + s u) x v| = b. What does not change from line to line is worked out once, so that it can be asked a million
 * times.
 */
import type { Cutter } from './centreline.ts';
import type { End } from './march.ts';
import { difference, inner, outer, square, times } from './space.ts';

/** A line that comes this near without going in touches, mm. */
const TOUCH = 2e-12;

/** The trim at so many degrees: of all runs the largest; null where none is met. Every cutter must be one straight. */
export function trimByRay(end: End): (degrees: number) => number | null {
  const leaves = end.cutters.map((cutter) => leaving(end, cutter));
  return (degrees) => {
    const [cosine, sine] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
    let most: number | null = null;
    for (const leave of leaves) {
      const s = leave(cosine, sine);
      if (s !== null && (most === null || s > most)) most = s;
    }
    return most;
  };
}

function leaving({ node, direction, reference, radius: rho }: End, { parts, radius }: Cutter) {
  const [run] = parts;
  if (parts.length !== 1 || run!.kind !== 'straight') throw new RangeError('a run with bends');
  // Square to the run, it is a circle.
  const u = square(direction, run!.direction);
  const [x, y, z] = square(difference(node, run!.from), run!.direction);
  const [cx, cy, cz] = square(times(rho, reference), run!.direction);
  const [sx, sy, sz] = square(times(rho, outer(direction, reference)), run!.direction);
  const a = inner(u, u);
  return (c: number, s: number): number | null => {
    const from = [x + c * cx + s * sx, y + c * cy + s * sy, z + c * cz + s * sz] as const;
    const half = inner(u, from);
    // It is a times what b squared is more than the square of how far the line passes; a touch counts.
    const under = half * half - a * (inner(from, from) - radius * radius);
    return under < -2 * radius * TOUCH * a ? null : (Math.sqrt(Math.max(0, under)) - half) / a;
  };
}

/** The furthest of a curve over phi: `sense` 1 for the least, -1 for the greatest. Sampled, then closer about every low of the samples. */
export function furthestSampled(at: (degrees: number) => number | null, sense: 1 | -1): number {
  const step = 0.2;
  const samples = Array.from({ length: 1800 }, (_, i) => heightOf(at(i * step), sense));
  const lows = samples.flatMap((here, i) => {
    const [before, after] = [samples.at(i - 1)!, samples[(i + 1) % samples.length]!];
    return here < Infinity && here <= before && here <= after ? [i] : [];
  });
  return sense * Math.min(...lows.map((i) => closer(at, sense, i * step, step)));
}

const heightOf = (s: number | null, sense: 1 | -1): number => (s === null ? Infinity : sense * s);

function closer(at: (degrees: number) => number | null, sense: 1 | -1, about: number, within: number): number {
  let [best, middle, reach] = [heightOf(at(about), sense), about, within];
  for (let turn = 0; turn < 14; turn++) {
    const from = middle - reach;
    for (let i = 0; i <= 20; i++) {
      const degrees = from + (i * reach) / 10;
      const height = heightOf(at(degrees), sense);
      if (height < best) [best, middle] = [height, degrees];
    }
    reach /= 8;
  }
  return best;
}
