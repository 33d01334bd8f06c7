/** A way through the car in words: so much forward, to the left, up. */
import type { Vec3 } from '../geometry/vector.ts';
import { listed } from './lists.ts';

const WAYS = [
  ['forward', 'back'],
  ['to the left', 'to the right'],
  ['up', 'down'],
] as const;

/** Of the whole way: what is less than this share of it, along an axis, is not worth a word. */
const SHARE = 0.1;

/** The parts along the axes, but for the small ones. */
export function moveInWords(move: Vec3, show: (mm: number) => string): string {
  const least = SHARE * Math.hypot(...move);
  return listed(
    move.flatMap((part, axis) =>
      Math.abs(part) <= least ? [] : [`${show(Math.abs(part))} ${WAYS[axis]![part > 0 ? 0 : 1]}`],
    ),
  );
}
