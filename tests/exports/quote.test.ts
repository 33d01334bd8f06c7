/** The papers of order and quote, read back: figures of the quote stand on the pages that they belong to, and on no other. */
import papaparse from 'papaparse';
import { describe, expect, it } from 'vitest';
import { reckonQuote } from '../../src/core/quote/reckon.ts';
import { plansOf } from '../../src/core/stock/of-job.ts';
import { WHO_DECIDES } from '../../src/core/words/cautions.ts';
import { QUOTE_IS } from '../../src/core/words/quote.ts';
import { unwatched } from '../../src/drawing/going.ts';
import { customerPdf } from '../../src/exports/quote/customer-pdf.ts';
import { orderPdf } from '../../src/exports/quote/order-pdf.ts';
import { shopPdf } from '../../src/exports/quote/shop-pdf.ts';
import { plainPrint } from '../../src/exports/shared/files.ts';
import { orderCsv } from '../../src/exports/tables/csv.ts';
import { demoText } from '../command-line.ts';
import { derived } from '../core/frame.ts';
import { fonts } from './fonts.ts';
import { derivedFrom } from './jobs.ts';
import { overlapsOf } from './overlap.ts';
import { readPdf } from './pdf.ts';

const QUOTE = {
  rates: {
    currency: 'crowns',
    hourly: 61.5,
    minutes: { cope: 13, bending: 9.5, weldMetre: 47 },
    prices: { boltEach: 1.15 },
    overhead: 11,
    margin: 17,
  },
  heading: 'A workshop\nby the river',
  customer: 'Somebody',
  terms: 'Paid in apples',
  extras: [{ what: 'Primer', amount: 133 }],
  took: [{ line: 'bending', hours: 2.75, remark: 'one twice' }],
};
const STOCK = {
  sticks: [
    { id: 'a', section: 'main', length: 6096, cost: 97 },
    { id: 'b', section: 'light', length: 6096, count: 1, cost: 71 },
  ],
};
const frame = derivedFrom(JSON.stringify({ ...JSON.parse(demoText()), quote: QUOTE, stock: STOCK }));
const plans = await plansOf(frame);

const PAPERS = { customer: customerPdf, shop: shopPdf, order: orderPdf } as const;

async function pagesOf(which: keyof typeof PAPERS, paper: 'a4' | 'letter', of = frame, by = plans) {
  const { bytes } = await PAPERS[which](of, by, fonts, { ...plainPrint, paper }, unwatched);
  return (await readPdf(bytes)).pages;
}

async function wordsOf(which: keyof typeof PAPERS): Promise<string> {
  return (await pagesOf(which, 'a4'))
    .flatMap(({ texts }) => texts.map(({ text }) => text))
    .join(' ')
    .replaceAll(/\s+/gu, ' ');
}

describe('the papers of a quote', () => {
  it.each(['customer', 'shop', 'order'] as const)(
    'keep %s’s words apart, on A4 and Letter, and say who decides',
    async (which) => {
      for (const paper of ['a4', 'letter'] as const) {
        for (const page of await pagesOf(which, paper)) {
          expect(overlapsOf(page)).toEqual([]);
          expect(page.texts.some(({ text }) => text.includes(WHO_DECIDES))).toBe(true);
        }
      }
    },
  );

  it('tell the customer what it comes to, and no rate', async () => {
    const { whole, groups } = reckonQuote(frame, plans);
    const words = await wordsOf('customer');
    for (const { price } of groups.filter((each) => each.price > 0))
      expect(words).toContain(`${price.toFixed(2)} crowns`);
    expect(words).toContain(`${whole.price.toFixed(2)} crowns`);
    for (const own of ['A workshop', 'by the river', 'Somebody', 'Paid in apples', 'Primer', QUOTE_IS]) {
      expect(words).toContain(own);
    }
    expect(words).toContain('Not in this total');
    for (const rate of ['61.50', '13 min', '9.5 min', '1.15', '11 percent', '17 percent', '2.75']) {
      expect(words).not.toContain(rate);
    }
  });

  it('tell the customer who it is from, its number and how long it holds, and nothing of how the shop reckons', async () => {
    const quote = {
      ...QUOTE,
      number: '2026-014',
      validUntil: 'Candlemas',
      rates: { ...QUOTE.rates, tax: { name: 'Tithe', percent: 10 } },
    };
    const of = derivedFrom(JSON.stringify({ ...JSON.parse(demoText()), quote, stock: STOCK }));
    const found = await plansOf(of);
    const words = (await pagesOf('customer', 'a4', of, found))
      .flatMap(({ texts }) => texts.map(({ text }) => text))
      .join(' ');
    const { whole, tax, toPay } = reckonQuote(of, found);
    expect(words).toMatch(/^A workshop by the river Quote /u);
    for (const said of ['Number: 2026-014', 'Valid until: Candlemas', 'Tithe, 10 %', 'Total without tax'])
      expect(words).toContain(said);
    for (const amount of [whole.price, tax!.amount, toPay]) expect(words).toContain(`${amount.toFixed(2)} crowns`);
    expect(words.slice(0, words.indexOf('Not in this total'))).not.toMatch(
      /Sawing|Fitting, by|Mitre|Making|Charged beside|Overhead|Margin|Sticks of/u,
    );
  });

  it('tell the shop how each line came, what is put on, and what it took', async () => {
    const { lines, whole } = reckonQuote(frame, plans);
    const words = await wordsOf('shop');
    for (const { amount } of lines) if (amount !== null) expect(words).toContain(`${amount.toFixed(2)} crowns`);
    for (const said of ['58 × 13 min each', 'at 61.50 an hour', '2.75', 'one twice', 'no rate yet', 'no price yet']) {
      expect(words).toContain(said);
    }
    for (const figure of Object.values(whole)) expect(words).toContain(`${figure.toFixed(2)} crowns`);
  });

  it('set a person’s own words on a line, and turn no figure round with them', async () => {
    const turned = {
      ...QUOTE,
      rates: { ...QUOTE.rates, currency: '\u202ekr\u0007' },
      customer: 'Some\u2067\tbody',
      extras: [{ what: 'Pri\u202emer', amount: 133 }],
      took: [{ line: 'bending', hours: 2.75, remark: 'one\u202e twice' }],
    };
    const sticks = STOCK.sticks.map((stick) => ({ ...stick, batch: 'H\u202e-1' }));
    const of = derivedFrom(JSON.stringify({ ...JSON.parse(demoText()), quote: turned, stock: { sticks } }));
    const words: Record<string, string> = {};
    for (const which of ['customer', 'shop', 'order'] as const) {
      const texts = (await pagesOf(which, 'a4', of, await plansOf(of))).flatMap((page) => page.texts);
      words[which] = texts.map(({ text }) => text).join(' ');
      expect(words[which]).not.toMatch(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/u);
    }
    expect(words['customer']).toMatch(/133\.00 kr/u);
    expect(words['shop']).toMatch(/took 2\.75 h, one twice\./u);
    expect(words['order']).toMatch(/batch H -1/u);
  });

  it('are a page of their own for a job with nothing in it', async () => {
    const nothing = derived({});
    for (const which of ['customer', 'shop', 'order'] as const) {
      expect(await pagesOf(which, 'a4', nothing, [])).toHaveLength(1);
    }
  });
});

describe('order.csv', () => {
  it('has what is to be bought, and not what stands on the rack', () => {
    const { data } = papaparse.parse<Record<string, string>>(orderCsv(frame, plans).text, {
      header: true,
      skipEmptyLines: true,
    });
    const sticks = data.filter(({ what, price }) => what === 'stick' && price !== '');
    expect(sticks.every(({ name }) => name === '1 3/4 x .120')).toBe(true);
    for (const { count, price_each: each, price } of sticks) expect(Number(price)).toBe(Number(count) * Number(each));
    expect(data.find(({ what }) => what === 'bolts')).toMatchObject({
      quantity: '16',
      price_each: '1.15',
      price: '18.4',
    });
    expect(data.filter(({ what }) => what === 'foot').map(({ count }) => count)).toEqual(['4', '4', '1']);
    expect(data.some(({ what }) => what === 'hole-saw')).toBe(false);
  });

  it('has the flat sheet of a box with its walls, and of a plate bent over a kink, and all of each thickness', () => {
    const box = { id: 'box', kind: 'box', size: [120, 90], thickness: 4, height: 60, wall: 3 };
    const kink = { runs: 'across', at: 20, angle: -90, radius: 2 };
    const bent = { id: 'bent', kind: 'plate', size: [100, 80], thickness: 2, kink };
    const post = (id: string, foot: string) => ({
      id,
      path: [`${id} low`, `${id} high`],
      ends: [{ fit: 'foot', foot, normal: [0, 0, 1] }, { fit: 'square' }],
    });
    const posts = derived({
      feet: [box, bent],
      nodes: Object.fromEntries(
        ['one', 'two', 'three'].flatMap((id, i) => [
          [`${id} low`, [0, 500 * i, 0]],
          [`${id} high`, [0, 500 * i, 900]],
        ]),
      ),
      members: [post('one', 'box'), post('two', 'box'), post('three', 'bent')],
    });
    const { data } = papaparse.parse<Record<string, string>>(orderCsv(posts, []).text, { header: true });
    const areas = (what: string) =>
      data.filter((row) => row['what'] === what).map((row) => [row['thickness_mm'], Number(row['area_mm2'])]);
    // Two walls over the long side, two between them. The plate is the example of tests/core/feet/plates.test.ts: DIN 6935 unfolds it to 96.16.
    const walls = 2 * (120 + 90 - 2 * 3) * 60;
    const flat = Number(areas('foot')[1]![1]);
    expect(areas('foot')).toEqual([
      ['4', 120 * 90 + walls],
      ['2', flat],
    ]);
    expect(flat).toBeCloseTo(96.16 * 80, 0);
    expect(areas('foot-sheet')).toEqual([
      ['2', flat],
      ['3', 2 * walls],
      ['4', 2 * 120 * 90],
    ]);
  });
});
