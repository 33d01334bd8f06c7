/** The cover bound against all that can be taken. */
import { expect, it } from 'vitest';
import { leastSticks } from '../../../src/core/stock/least-sticks.ts';
import type { StickSort } from '../../../src/core/stock/types.ts';
import { drawFrom } from '../../reference/oracles/seeded.ts';

const sort = (cost: number, count: number, batch: string | null = null): StickSort => ({
  id: 's',
  length: 0,
  count,
  cost,
  batch,
});

/** Every choice of as many sticks of each sort as could be wanted. */
function byTrying(
  sorts: readonly StickSort[],
  room: readonly number[],
  all: number,
  ofBatch: ReadonlyMap<string, number>,
) {
  let best = Infinity;
  const choose = (i: number, taken: readonly number[]): void => {
    if (i < sorts.length) {
      for (let n = 0; n <= Math.min(Math.ceil(all / room[i]!), sorts[i]!.count); n++) choose(i + 1, [...taken, n]);
      return;
    }
    const given = (batch: string | null) =>
      taken.reduce((sum, n, at) => sum + (batch === null || sorts[at]!.batch === batch ? n * room[at]! : 0), 0);
    if (given(null) < all || [...ofBatch].some(([batch, mm]) => given(batch) < mm)) return;
    best = Math.min(
      best,
      taken.reduce((sum, n, at) => sum + n * sorts[at]!.cost, 0),
    );
  };
  choose(0, []);
  return best;
}

it('is what whole sticks cost at the least, batches counted', () => {
  const { between } = drawFrom(7);
  const draw = (below: number): number => Math.floor(between(0, below));
  for (let job = 0; job < 400; job++) {
    const sorts = Array.from({ length: 1 + draw(3) }, () =>
      sort(1 + draw(30), draw(2) === 0 ? Infinity : draw(4), ['H', null, null][draw(3)]),
    );
    const room = sorts.map(() => 20 + draw(80));
    const all = 1 + draw(160);
    const ofBatch = new Map(draw(2) === 0 ? [] : [['H', Math.min(all, 1 + draw(100))] as const]);
    const tried = byTrying(sorts, room, all, ofBatch);
    expect([job, leastSticks(sorts, room, { all, ofBatch }) ?? Infinity]).toEqual([job, tried]);
  }
});

it('one stick more where a hair is missing, and none where it fits to the last of a rounding', () => {
  const of = (all: number) => leastSticks([sort(5, Infinity)], [100], { all, ofBatch: new Map() });
  expect([of(200), of(200.001)]).toEqual([10, 15]);
});
