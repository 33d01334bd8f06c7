/**
 * How deep the wall of a finished straight tube stands in what it is coped to, by going along its lines in small steps: from where the
 * search trims a line (march.ts) to the tube's other end, on the outside and on the bore. A line that nothing trims stands down to the
 * least trim of the outside.
 */
import { distanceToCentreline, type Cutter } from './centreline.ts';
import { generatorStart, insideOf, trimByMarch, type End } from './march.ts';
import { along } from './space.ts';

const STEP = 0.5;

/** The greatest depth in one cutter, mm, over lines at these degrees; `long` mm from the node the tube ends square. */
export function depthAgain(end: End, bore: number, cutter: Cutter, long: number, degrees: readonly number[]): number {
  const outside = degrees.map((phi) => trimByMarch(end, phi));
  const reached = outside.filter((s) => s !== null);
  const tip = reached.length === 0 ? 0 : Math.min(...reached);
  const inner: End = { ...end, radius: bore, outside: end.radius };
  let deepest = 0;
  for (const [i, phi] of degrees.entries()) {
    for (const [lines, trim] of [
      [end, outside[i]!],
      [inner, trimByMarch(inner, phi)],
    ] as const) {
      const start = generatorStart(lines, phi);
      for (const { from, to } of insideOf(lines, cutter, phi, trim ?? tip, long)) {
        for (let s = from; s <= to; s += STEP)
          deepest = Math.max(deepest, cutter.radius - distanceToCentreline(cutter, along(start, end.direction, s)));
      }
    }
  }
  return deepest;
}
