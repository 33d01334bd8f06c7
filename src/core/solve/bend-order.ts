/**
 * Orders in which a tube's bends are made: the plain one, and from which bend made before a rotation counts.
 *
 * Between two bends that nothing was bent between the tube is still straight, so the rotations on the way from the one to
 * the other add up, and the way back has the other sign.
 */
import { wrapHalfTurn, type Radians } from '../geometry/angle.ts';
import type { Bender } from '../job/kinds/bender.ts';
import type { BendStep } from '../job/kinds/bent.ts';
import type { Bend } from './types.ts';

/** With more bends than this the orders are not searched (core/rehearse). */
export const SEARCHED_BENDS = 8;

/**
 * Marked from an end, the bends nearest the end in front come first: with bends that lie beyond their marks that is the end
 * measured from, else the other. From the middle outwards those towards end B are made before the others.
 */
export function plainOrder(
  count: number,
  from: 'A' | 'B' | 'middle',
  bendLies: Bender['bendLies'],
): readonly BendStep[] {
  const middle = { A: 0, B: count, middle: Math.floor(count / 2) }[from];
  const numbers = Array.from({ length: count }, (_, index) => index + 1);
  const made = (bends: readonly number[], front: 'A' | 'B'): readonly BendStep[] =>
    (front === 'A' ? bends : bends.toReversed()).map((bend) => ({ bend, front }));
  const [towardsB, towardsA] = [numbers.slice(middle), numbers.slice(0, middle)];
  return bendLies === 'beyond'
    ? [...made(towardsB, 'A'), ...made(towardsA, 'B')]
    : [...made(towardsB, 'B'), ...made(towardsA, 'A')];
}

/**
 * Of the bends made, the one nearest to this one, counted in bends along the tube; of two as near the one made last. Null
 * where none is made.
 */
export function nearestMade(made: readonly BendStep[], bend: number): number | null {
  let nearest: number | null = null;
  for (const each of made)
    if (nearest === null || Math.abs(each.bend - bend) <= Math.abs(nearest - bend)) nearest = each.bend;
  return nearest;
}

/**
 * From the plane of bend `from` to that of bend `to`, 1 = first from end A, right-hand about the direction from end A to
 * end B, (-pi, pi].
 */
export function rotationBetween(bends: readonly Bend[], from: number, to: number): Radians {
  const between = bends.slice(Math.min(from, to), Math.max(from, to));
  const sum = between.reduce((total, { rotation }) => total + rotation, 0);
  return wrapHalfTurn(from < to ? sum : -sum);
}

/**
 * How the tube is turned before the step at `index` of an order: from the plane of bend `from`, right-hand about the direction from the
 * end in front to the other, (-pi, pi]. Null on the first, which may lie any way.
 */
export function rotationBefore(
  bends: readonly Bend[],
  order: readonly BendStep[],
  index: number,
): { readonly from: number; readonly rotation: Radians } | null {
  const { bend, front } = order[index]!;
  const from = nearestMade(order.slice(0, index), bend);
  if (from === null) return null;
  return { from, rotation: wrapHalfTurn((front === 'A' ? 1 : -1) * rotationBetween(bends, from, bend)) };
}

/** Whether an order of bending holds every bend of a tube once. */
export const isOrderOf = (order: readonly BendStep[], bends: number): boolean =>
  order.length === bends &&
  new Set(order.map(({ bend }) => bend)).size === bends &&
  order.every(({ bend }) => bend >= 1 && bend <= bends);

/** Whether both make the same bends with the same ends in front, one after the other. */
export const sameOrder = (one: readonly BendStep[], other: readonly BendStep[]): boolean =>
  one.length === other.length &&
  one.every(({ bend, front }, i) => bend === other[i]!.bend && front === other[i]!.front);
