/** From one named place to the next by the arrow keys, as they lie on the screen. */
import type { Projection } from '../camera/projection.ts';
import type { Aim, Targets } from './aim.ts';

const WAYS: Readonly<Record<string, readonly [x: number, y: number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

export const isArrow = (key: string): boolean => Object.hasOwn(WAYS, key);

/** Pixels: what is nearer than this lies at the same place. */
const HERE = 2;

/**
 * The nearest named place that lies that way from pixel `from`, no more to the side than ahead, and in the bay; null where there is none.
 * What lies to the side counts as twice as far.
 */
export function walkTo(
  { named }: Targets,
  view: Projection,
  from: { readonly x: number; readonly y: number },
  key: string,
): Aim | null {
  const [ux, uy] = WAYS[key]!;
  let nearest: Aim | null = null;
  let least = Infinity;
  for (const aim of named) {
    const { x, y } = view.toScreen(aim.at);
    if (x < 0 || y < 0 || x > view.width || y > view.height) continue;
    const ahead = (x - from.x) * ux + (y - from.y) * uy;
    const aside = Math.abs((x - from.x) * uy - (y - from.y) * ux);
    if (ahead <= HERE || aside > ahead || ahead + 2 * aside >= least) continue;
    least = ahead + 2 * aside;
    nearest = aim;
  }
  return nearest;
}
