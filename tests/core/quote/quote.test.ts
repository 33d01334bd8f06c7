/** Order list and quote of a small frame, every figure worked out here by hand. */
import { describe, expect, it } from 'vitest';
import { derive, type Derived } from '../../../src/core/derive.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { amountsOf } from '../../../src/core/quote/amounts.ts';
import { orderList } from '../../../src/core/quote/order.ts';
import { reckonQuote, type QuoteLine, type Reckoned } from '../../../src/core/quote/reckon.ts';
import { rateBy, rateKept } from '../../../src/core/quote/units.ts';
import { setStage } from '../../../src/core/shape/made-stage.ts';
import { sawStick } from '../../../src/core/shape/saw-stick.ts';
import { feedOf } from '../../../src/core/solve/feed.ts';
import { plansOf } from '../../../src/core/stock/of-job.ts';
import { rounded, shareOf, summed } from '../../../src/core/units/money.ts';
import {
  howInWords,
  lineInWords,
  moneyInWords,
  onTopInWords,
  sticksInWords,
  stillCheaperInWords,
  tookInWords,
  withoutInWords,
} from '../../../src/core/words/quote.ts';
import { derived } from '../frame.ts';

const PLATE = {
  id: 'pad',
  kind: 'plate',
  size: [100, 80],
  thickness: 4,
  holes: [
    { at: [30, 0], diameter: 11 },
    { at: [-30, 0], diameter: 11 },
  ],
};

/** A hoop of one bend on two plates and a straight bar coped to both its legs, which stand 1000 apart. */
const frameWith = (more: object = {}) =>
  derived({
    feet: [PLATE],
    nodes: {
      a: [0, 500, 0],
      b: [0, 500, 900],
      c: [0, -500, 900],
      d: [0, -500, 0],
      e: [0, 500, 400],
      f: [0, -500, 400],
    },
    members: [
      { id: 'hoop', path: ['a', 'b', 'c', 'd'], ends: [FOOT, FOOT] },
      { id: 'bar', path: ['e', 'f'], ends: [COPED, COPED] },
    ],
    ...more,
  });
const FOOT = { fit: 'foot', foot: 'pad', normal: [0, 0, 1] };
const COPED = { fit: 'cope', against: ['hoop'] };
/** What a stick of it is called by what is noted of it. */
const K1 = 'sticks 6000 mm at 80.5 of main';
const STOCK = { kerf: 2, sticks: [{ id: 'k1', section: 'main', length: 6000, cost: 80.5 }] };
const RATES = {
  currency: 'EUR',
  hourly: 60,
  minutes: {
    straightCut: 3,
    cope: 10,
    footCut: 4,
    bending: 7,
    tubeFitting: 20,
    jointFitting: 11,
    bendFitting: 5,
    weldMetre: 30,
    footMaking: 12,
  },
  prices: { footKilogram: 4.5, boltEach: 0.85 },
  overhead: 10,
  margin: 20,
};

/** The frame once these tubes are cut. */
const withCut = (frame: Derived, tubes: readonly string[]): Derived =>
  rederived(tubes.reduce((job, tube) => setStage(job, frame, tube, 'cut'), frame.job));

function rederived(job: Job): Derived {
  const derivation = derive(job);
  if (!derivation.ok) throw new Error('not derived');
  return derivation.value;
}

const line = ({ lines }: Reckoned, id: string): QuoteLine => lines.find((each) => each.id === id)!;

async function reckoned(more: object = {}, quote: object = { rates: RATES }): Promise<Reckoned> {
  const frame = frameWith({ stock: STOCK, quote, ...more });
  return reckonQuote(frame, await plansOf(frame));
}

describe('what is counted', () => {
  it('is tubes, cuts by kind, bends, joints, feet and bolts', () => {
    const { tubes, spares, bends, copes, mitres, footCuts, welds, feet, bolts } = amountsOf(
      frameWith({ stock: { ...STOCK, spares: [{ section: 'main', length: 300, count: 2 }] } }),
    );
    expect({ tubes, spares, bends, copes, mitres, footCuts }).toEqual({
      tubes: 2,
      spares: 2,
      bends: 2,
      copes: 2,
      mitres: 0,
      footCuts: 2,
    });
    expect([welds.tubes.joints, welds.feet.joints]).toEqual([2, 2]);
    expect(feet).toEqual([
      { foot: expect.objectContaining({ id: 'pad' }), count: 2, area: 100 * 80, mass: expect.closeTo(massOfPlate, 9) },
    ]);
    expect(bolts).toEqual([{ hole: 11, count: 4 }]);
  });

  it('welds legs all round on level plates, and equal tubes at right angles along half of each of two ellipses', () => {
    const { welds } = amountsOf(frameWith());
    expect(welds.feet.length).toBeCloseTo(2 * Math.PI * 44.45, 5);
    // 4 sqrt(2) E(1/2) r, with the complete elliptic integral of the tables.
    expect(welds.tubes.length).toBeCloseTo(2 * 4 * Math.SQRT2 * 1.3506438810476755 * 22.225, 4);
  });
});

const massOfPlate = 7850e-9 * 4 * (100 * 80 - 2 * (Math.PI / 4) * 11 ** 2);

describe('a quote', () => {
  it('says of each line how many, at which rate, and what that comes to', async () => {
    const quote = await reckoned();
    const figures = Object.fromEntries(
      quote.lines.map(({ id, quantity, hours, amount }) => [id, [quantity, hours, amount]]),
    );
    const welded = rounded((2 * Math.PI * 44.45 + 8 * Math.SQRT2 * 1.3506438810476755 * 22.225) / 1000);
    expect(figures).toEqual({
      [K1]: [1, null, 80.5],
      bolts: [4, null, 3.4],
      saws: [1, null, null],
      footSteel: [rounded(2 * massOfPlate), null, rounded(rounded(2 * massOfPlate) * 4.5)],
      straightCut: [2, 0.1, 6],
      cope: [2, 0.33, 19.8],
      footCut: [2, 0.13, 7.8],
      bending: [2, 0.23, 13.8],
      tubeFitting: [2, 0.67, 40.2],
      jointFitting: [4, 0.73, 43.8],
      bendFitting: [2, 0.17, 10.2],
      weldMetre: [welded, rounded(welded / 2), rounded(rounded(welded / 2) * 60)],
      footMaking: [2, 0.4, 24],
    });
    expect(howInWords(line(quote, 'cope'), RATES)).toBe('2 × 10 min each = 0.33 h, at 60.00 an hour');
    expect(howInWords(line(quote, K1), RATES)).toBe('1 × 80.50 each');
    expect(quote.unpriced.map(({ id }) => id)).toEqual(['saws']);
  });

  it('adds up as it is shown: lines to groups, groups with overhead and margin to the whole', async () => {
    const { lines, groups, whole, hours } = await reckoned();
    for (const { group, amount, overhead, margin, price } of groups) {
      const own = lines.filter((each) => each.group === group).map((each) => each.amount!);
      expect(amount.toFixed(2)).toBe(own.reduce((sum, each) => sum + each, 0).toFixed(2));
      expect(overhead).toBe(shareOf(amount, 10));
      expect(margin).toBe(shareOf(summed([amount, overhead]), 20));
      expect(price.toFixed(2)).toBe((amount + overhead + margin).toFixed(2));
    }
    expect(groups.map(({ group }) => group)).toEqual(['material', 'making', 'feet']);
    for (const key of ['amount', 'overhead', 'margin', 'price'] as const) {
      expect(whole[key].toFixed(2)).toBe(groups.reduce((sum, each) => sum + each[key], 0).toFixed(2));
    }
    expect(hours.toFixed(2)).toBe(lines.reduce((sum, each) => sum + (each.hours ?? 0), 0).toFixed(2));
  });

  it('counts nothing that nobody gave a rate for, and names it', async () => {
    const { cope: _, ...minutes } = RATES.minutes;
    const quote = await reckoned({}, { rates: { ...RATES, minutes, prices: {} } });
    expect(quote.unpriced.map(({ id }) => id)).toEqual(['bolts', 'saws', 'footSteel', 'cope']);
    expect(howInWords(line(quote, 'cope'), RATES)).toBe('2: no rate yet');
    const frame = frameWith({ stock: STOCK });
    expect(withoutInWords(quote, frame.job)).toBe(
      'Not in this total, for want of a price or a rate: Bolts; Hole saws; Steel for feet; Coping.',
    );
    const bare = await reckoned({}, {});
    expect(bare.whole).toEqual({ amount: 80.5, overhead: 0, margin: 0, price: 80.5 });
    expect(bare.unpriced).toHaveLength(bare.lines.length - 1);
  });

  it('reckons hours without what an hour costs, and no money', async () => {
    const { hourly: _, ...rates } = RATES;
    const quote = await reckoned({}, { rates });
    expect(line(quote, 'bending')).toMatchObject({ hours: 0.23, amount: null });
    expect(howInWords(line(quote, 'bending'), rates)).toBe('2 × 7 min each = 0.23 h; an hour has no rate yet');
  });

  it('has what is charged beside, and what lines took beside what was thought', async () => {
    const quote = await reckoned(
      {},
      {
        rates: RATES,
        extras: [{ what: 'Paint', amount: 120 }],
        took: [
          { line: 'bending', hours: 0.5, on: '2026-03-02' },
          { line: 'bending', hours: 0.25 },
          { line: K1, paid: 82 },
          { line: 'gone', hours: 1 },
        ],
      },
    );
    expect(line(quote, 'extra 1')).toMatchObject({ amount: 120, group: 'extras' });
    expect(line(quote, 'bending').took).toMatchObject({ hours: 0.75, paid: null });
    expect(line(quote, K1).took).toMatchObject({ hours: null, paid: 82 });
    expect(quote.took).toEqual({ hours: 1.75, paid: 82 });
    expect(quote.stray).toEqual([{ line: 'gone', hours: 1 }]);
  });

  it('does not know how many sticks where the job has none, or too few', async () => {
    const without = await reckoned({ stock: {} });
    expect(line(without, 'tube main')).toMatchObject({ by: 'unknown', amount: null, measure: 'm' });
    const short = await reckoned({
      stock: { ...STOCK, sticks: [{ id: 'k1', section: 'main', length: 3000, count: 1, cost: 40 }] },
    });
    expect(line(short, 'sticks 3000 mm at 40 of main')).toMatchObject({
      quantity: 1,
      amount: 40,
      of: { alike: { rack: 1 } },
    });
    expect(line(short, 'wanted main 1')).toMatchObject({ amount: null });
  });

  it('counts a stick that was sawn whole, its left-over no more, and one of the same length that was bought', async () => {
    const whole = { id: 'w1', section: 'main', length: 6000, cost: 80, cuts: [], left: 3000, from: 'k1', kept: 'k2' };
    const part = { ...whole, length: 3000, cost: 40, left: 100, kept: undefined };
    const sticks = [
      { id: 'k2', section: 'main', length: 3000, count: 1, cost: 40 },
      { ...STOCK.sticks[0]!, length: 3500 },
    ];
    const left = await reckoned({ stock: { ...STOCK, sticks, sawn: [whole] } });
    expect(sticksIn(left)).toEqual([
      ['sticks 3500 mm at 80.5 of main', 1, 80.5],
      ['sticks 6000 mm at 80 of main', 1, 80],
    ]);
    const sawn = [whole, { ...part, id: 'w2', from: 'k2' }, { ...part, id: 'w3', from: 'k9', bought: true }];
    const all = await reckoned({ stock: { ...STOCK, sticks: sticks.slice(1), sawn } });
    expect(sticksIn(all)).toEqual([
      ['sticks 3500 mm at 80.5 of main', 2, 161],
      ['sticks 6000 mm at 80 of main', 1, 80],
      ['sticks 3000 mm at 40 of main', 1, 40],
    ]);
  });

  it('charges what the rack had of the sort that a left-over came to, planned or sawn', async () => {
    const whole = { id: 'w1', section: 'main', length: 6000, cost: 80, cuts: [], left: 3000, from: 'k1', kept: 'k2' };
    const alike = { ...whole, length: 3000, cost: 40, left: 100, from: 'k2', kept: undefined };
    const sort = { id: 'k2', section: 'main', length: 3000, cost: 40 };
    const ofLength = (quote: Reckoned) => sticksIn(quote).filter(([id]) => id === 'sticks 3000 mm at 40 of main');
    // The spare takes one of them, the hoop the other.
    const both = { ...STOCK, kerf: 0, sticks: [{ ...sort, count: 2 }], spares: [{ section: 'main', length: 2900 }] };
    const planned = frameWith({ stock: { ...both, sawn: [whole] } });
    const plans = await plansOf(planned);
    expect(plans[0]!.plan.sticks).toHaveLength(2);
    expect(ofLength(reckonQuote(planned, plans))).toEqual([['sticks 3000 mm at 40 of main', 1, 40]]);
    expect(orderList(planned, plans).fromRack.map(({ from, count }) => [from, count])).toEqual([
      ['left-over', 1],
      ['rack', 1],
    ]);
    const sawn = [whole, { ...alike, id: 'w2' }, { ...alike, id: 'w3' }];
    expect(ofLength(await reckoned({ stock: { ...STOCK, sticks: [], sawn } }))).toEqual([
      ['sticks 3000 mm at 40 of main', 1, 40],
    ]);
  });

  const ON = { on: '2026-03-02', rest: { sticks: [], proven: false } };

  it('keeps what was noted of a stick on its line, and comes to the same, once that is sawn', async () => {
    const quote = { rates: RATES, took: [{ line: K1, paid: 82 }] };
    const before = frameWith({ stock: { ...STOCK, keepFrom: 100, sticks: [{ ...STOCK.sticks[0], count: 2 }] }, quote });
    const plans = await plansOf(before);
    const after = rederived(sawStick(before.job, before, plans[0]!.plan.sticks[0]!, ON));
    const [open, sawn] = [reckonQuote(before, plans), reckonQuote(after, await plansOf(after))];
    expect(sticksIn(sawn)).toEqual(sticksIn(open));
    expect(sawn.whole).toEqual(open.whole);
    for (const each of [open, sawn]) expect([line(each, K1).took.paid, each.stray]).toEqual([82, []]);
    expect(lineInWords(line(sawn, K1).of, after.job).counts).toBe(
      'Whole sticks: 1 sawn already. What is left of those that were sawn costs no more.',
    );
  });

  it('has a line for each batch and price, and one for sticks alike that are bought, on the rack and sawn', async () => {
    const stick = { section: 'main', length: 6000, cost: 80 };
    const sawn = [
      { ...stick, id: 'w1', cuts: [], left: 0 },
      { ...stick, id: 'w2', batch: 'H-1', cuts: [], left: 0 },
      { ...stick, id: 'w3', cost: 81, cuts: [], left: 0 },
    ];
    const quote = await reckoned({ stock: { ...STOCK, sticks: [{ ...stick, id: 'k1' }], sawn } });
    expect(sticksIn(quote)).toEqual([
      ['sticks 6000 mm at 80 of main', 2, 160],
      ['sticks 6000 mm at 80 of main\nH-1', 1, 80],
      ['sticks 6000 mm at 81 of main', 1, 81],
    ]);
    expect(lineInWords(quote.lines[0]!.of, frameWith().job).counts).toMatch(
      /^Whole sticks: 1 to be bought and 1 sawn already\./u,
    );
  });
});

const sticksIn = ({ lines }: Reckoned) =>
  lines.flatMap(({ id, of, quantity, amount }) => (of.kind === 'sticks' ? [[id, quantity, amount]] : []));

describe('an order list', () => {
  it('has sticks to buy, steel for plates, bolts, and the saws that the shop has not', async () => {
    const frame = frameWith({ stock: STOCK, quote: { rates: RATES }, tools: { saws: [] } });
    const list = orderList(frame, await plansOf(frame));
    expect(list.sticks).toMatchObject([{ count: 1, from: 'bought', cost: 80.5 }]);
    expect(list.footSheet).toEqual([{ thickness: 4, area: 2 * 100 * 80 }]);
    expect(list.bolts).toEqual([{ hole: 11, count: 4 }]);
    expect(list.bought.bolts).toEqual({ quantity: 4, measure: 'each', each: 0.85, cost: 3.4 });
    expect(list.saws).toEqual([{ diameter: 44.45, cuts: 2, isThere: false }]);
    expect(list.bought.saws).toEqual({ quantity: 1, measure: 'each', each: null, cost: null });
    const steel = rounded(rounded(2 * massOfPlate) * 4.5);
    expect(list.cost).toBe(summed([80.5, 3.4, steel]));
    expect([list.unpriced, list.bought.padding, list.gussets]).toEqual([1, null, []]);
  });

  it('counts the hole saws that the notching wants and the shop has not, at a price each', async () => {
    const rates = { ...RATES, prices: { ...RATES.prices, sawEach: 21.5 } };
    const of = async (saws: readonly object[]) => {
      const frame = frameWith({ stock: STOCK, quote: { rates }, tools: { saws } });
      const plans = await plansOf(frame);
      const found = reckonQuote(frame, plans).lines.find(({ id }) => id === 'saws');
      return [orderList(frame, plans).bought.saws?.cost ?? null, found?.amount ?? null];
    };
    expect(await of([])).toEqual([21.5, 21.5]);
    expect(await of([{ id: 'w', name: 'Saw', diameter: 44.45, depth: 40 }])).toEqual([null, null]);
    const bare = frameWith({ stock: STOCK, quote: { rates: RATES }, tools: { saws: [] } });
    const unpriced = reckonQuote(bare, await plansOf(bare)).unpriced;
    expect(unpriced.map(({ id }) => id)).toContain('saws');
  });

  it('has a tax on the whole price where the shop reckons one', async () => {
    const taxed = frameWith({ stock: STOCK, quote: { rates: { ...RATES, tax: { name: 'VAT', percent: 19 } } } });
    const plans = await plansOf(taxed);
    const { whole, tax, toPay } = reckonQuote(taxed, plans);
    expect(whole.price).toBeGreaterThan(100);
    expect(tax).toEqual({ name: 'VAT', percent: 19, amount: rounded(whole.price * 0.19) });
    expect(toPay).toBe(summed([whole.price, tax!.amount]));
    const plain = reckonQuote(frameWith({ stock: STOCK, quote: { rates: RATES } }), plans);
    expect([plain.tax, plain.toPay]).toEqual([null, plain.whole.price]);
  });

  it('asks for no tube that is cut already, with no stick listed; the quote names those', () => {
    const all = frameWith();
    const rest = withCut(all, ['hoop']);
    const bar = feedOf(rest.job, rest.byId.get('bar')!).cutLength;
    expect(orderList(all, []).unplanned[0]!.length).toBeGreaterThan(2 * bar);
    expect(orderList(rest, []).unplanned).toEqual([{ section: 'main', length: bar }]);
    expect(orderList(withCut(rest, ['bar']), []).unplanned).toEqual([]);
    expect(line(reckonQuote(rest, []), 'cut-already')).toMatchObject({ quantity: 1, amount: null });
  });

  it('leaves out what stands on the rack', async () => {
    const sticks = [{ id: 'k1', section: 'main', length: 6000, count: 1, cost: 80.5 }];
    const frame = frameWith({ stock: { ...STOCK, sticks } });
    const list = orderList(frame, await plansOf(frame));
    expect([list.sticks, list.fromRack]).toMatchObject([[], [{ count: 1, from: 'rack' }]]);
  });
});

describe('figures', () => {
  it('are rounded half up to two decimals, as on paper', () => {
    expect([1.005, 2.675, 0.125, 1.004999, 1e-9].map(rounded)).toEqual([1.01, 2.68, 0.13, 1, 0]);
    expect(summed([0.1, 0.2, 0.3])).toBe(0.6);
  });

  it('are by the foot and the pound in a job in inches, and come back as they were typed', () => {
    expect(rateKept(1.25, 'ft')).toBeCloseTo(1.25 / 0.3048, 10);
    for (const rate of [1.25, 0.1, 7, 13.37]) {
      expect(rateBy(rateKept(rate, 'ft'), 'ft')).toBe(rate);
      expect(rateBy(rateKept(rate, 'lb'), 'lb')).toBe(rate);
    }
    expect(rateBy(2.2, 'each')).toBe(2.2);
  });

  it('name the money as the shop does', () => {
    expect(['$', 'EUR', ''].map((currency) => moneyInWords(12.5, { currency }))).toEqual([
      '$12.50',
      '12.50 EUR',
      '12.50',
    ]);
  });

  it('stay as they are beside words that would turn them round', () => {
    const job = { ...frameWith({ stock: STOCK }).job, quote: { rates: { currency: '\u202eEUR\n' } } };
    const entry = { line: 'gone\u2066', paid: 12.5, hours: 1.25, on: '\u0007today', remark: 'one\u202d\r\ntwice' };
    const like = { section: 'main', length: 6000, batch: 'H\u202e-204' };
    for (const words of [
      moneyInWords(12.5, job.quote.rates),
      tookInWords(entry, [], job),
      sticksInWords(like, job),
      lineInWords({ kind: 'extra', extra: { what: 'Paint\u2067\tred', amount: 1 } }, job).name,
    ]) {
      expect(words).not.toMatch(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/u);
    }
    expect(tookInWords(entry, [], job)).toBe(
      'gone, a line that is no more: today, took 1.25 h, paid 12.50 EUR, one twice.',
    );
  });

  it('say which totals go by a plan that is not proven', () => {
    const plan = { sticks: [], unplaced: [], unfound: [], cost: 100 };
    expect(stillCheaperInWords([{ plan: { ...plan, leastCost: 100 } }])).toBeNull();
    expect(stillCheaperInWords([{ plan: { ...plan, leastCost: 99 } }])).toMatch(/may still get cheaper/u);
  });

  it('say what neither overhead nor margin is put on, and what no line has', () => {
    expect(onTopInWords({ overhead: 10, margin: 20 })).toBe(
      'Overhead is 10 percent of what the lines come to; margin is 20 percent of that and overhead together. What is charged beside is left out of both.',
    );
    expect(onTopInWords()).toMatch(/^Overhead is not given; margin is not given\. What is charged beside/u);
    const { counts } = lineInWords({ kind: 'weldMetre' }, frameWith().job);
    expect(counts).toMatch(/feet and plates to the car: that is in no line\.$/u);
  });

  it('have a name for every line', async () => {
    const frame = frameWith({ stock: STOCK });
    const { lines } = await reckoned();
    expect(lines.map(({ of }) => lineInWords(of, frame.job).name)).toContain('Sticks of main, 6 m');
  });
});
