/**
 * Jobs in which nothing at all may be wasted: triplets that fill a stick, made as E. Falkenauer made them (A hybrid grouping genetic algorithm for bin packing, Journal of Heuristics 2, 1996): whole
 * numbers, of 1000 the first from 380 to 490, the second from 250 to half of what that leaves, the third the rest.
 */
import type { Part } from '../../../src/core/stock/types.ts';
import { uniformFrom } from '../../reference/oracles/seeded.ts';

export function tripletsOf(count: number, seed: number): readonly Part[] {
  const next = uniformFrom(seed * 7919 + count);
  const whole = (from: number, to: number): number => from + Math.floor(next() * (to - from + 1));
  return Array.from({ length: count / 3 }, () => {
    const first = whole(380, 490);
    const second = whole(250, Math.floor((1000 - first) / 2));
    return [first, second, 1000 - first - second];
  })
    .flat()
    .map((length, i) => ({ id: `t${i}`, spare: null, length, batch: null }));
}
