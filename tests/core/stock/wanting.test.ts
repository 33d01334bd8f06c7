/** What is to be got for what a plan does not place. */
import { describe, expect, it } from 'vitest';
import { planSection } from '../../../src/core/stock/of-job.ts';
import type { ToCut } from '../../../src/core/stock/to-cut.ts';
import type { Part, StickSort } from '../../../src/core/stock/types.ts';
import { wantingInWords } from '../../../src/core/words/stock.ts';
import { tripletsOf } from './triplets.ts';

const part = (id: string, length: number, batch: string | null = null): Part => ({ id, spare: null, length, batch });
const spares = (count: number, length: number): readonly Part[] =>
  Array.from({ length: count }, (_, i) => ({ id: `spare 0.${i}`, spare: 0, length, batch: null }));
const stick = (length: number, more: Partial<StickSort> = {}): StickSort => ({
  id: `k${length}`,
  length,
  count: Infinity,
  cost: length,
  batch: null,
  ...more,
});
const section = (parts: readonly Part[], more: Partial<ToCut> = {}): ToCut => ({
  section: 'main',
  parts,
  sticks: [],
  bought: null,
  sawing: { kerf: 2.5, squareOff: 0 },
  begun: [],
  hoops: [],
  ...more,
});
const said = (of: ToCut, unit: 'mm' | 'in' = 'mm'): readonly string[] =>
  planSection(of).wanting.map((each) => wantingInWords(each, { ...of, name: 'Tube' }, (id) => Number(id), unit));

describe('of a section without a stick', () => {
  const parts = [part('1', 700.3), part('2', 700.3), ...spares(3, 400)];

  it('that none is listed is said once', () => {
    expect(said(section(parts))).toEqual([
      'No stick of this section is listed: nothing is planned for 1, 2 and 3 spares.',
    ]);
    // So many of the longest part's length would do.
    expect(planSection(section(parts)).wanting[0]).toMatchObject({ count: 5, length: 700.3 });
  });

  it('it is planned on the length that its tube is bought in', () => {
    expect(said(section(parts, { bought: 6000 }))).toEqual(['No stick for 1, 2 and 3 spares: get 1 more of 6 m.']);
    const withLeftOver = section([part('1', 2000)], { bought: 6000, sticks: [stick(700, { count: 1 })] });
    expect(said(withLeftOver)).toEqual(['No stick for 1: get 1 more of 6 m.']);
  });
});

it('what is too long asks for no less than it is, and alike ones together', () => {
  // 0.1 mm longer than a stick of 240 in.
  const of = section([part('1', 6096.1), ...spares(2, 6200)], { sticks: [stick(6096)] });
  expect(said(of, 'in')).toEqual([
    'No stick for 1: get one of 240 1/32 in or more.',
    'No stick for 2 spares: get 2 of 244 1/8 in or more.',
  ]);
});

it('two thousand spares are one word', () => {
  const [words] = said(section(spares(2000, 300), { sticks: [stick(6000, { count: 1 })] }));
  expect(words).toBe('No stick for 1981 spares: get 105 more of 6 m.');
});

describe('where sticks do not suffice', () => {
  it('is known of too little length', () => {
    const of = section([part('1', 3000), part('2', 3000)], { sticks: [stick(3000, { count: 1 })] });
    expect(said(of)).toEqual(['No stick for 2: get 1 more of 3 m.']);
    expect(planSection(of).plan.unfound).toEqual([]);
  });

  it('and where nobody found how, no more than that is said', () => {
    // Each stick could be filled to the last tenth of a mm; of parts of so many lengths no search finds it.
    const parts = tripletsOf(900, 3).map((each, i) => ({ ...each, id: `${i}`, length: each.length + (i % 3) * 1e-3 }));
    const of = section(parts, {
      sticks: [stick(1000.003, { count: 300 })],
      sawing: { kerf: 0, squareOff: 0 },
    });
    const { plan } = planSection(of);
    expect(plan.unplaced.length).toBeGreaterThan(0);
    expect(plan.unfound).toEqual(plan.unplaced);
    for (const words of said(of))
      expect(words).toMatch(/^No way was found to place .*: with \d+ more of .*, there is one/u);
  });
});
