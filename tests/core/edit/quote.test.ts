import { describe, expect, it } from 'vitest';
import {
  addExtra,
  addTook,
  changeTook,
  removeExtra,
  setExtra,
  setQuoteText,
  setRates,
} from '../../../src/core/edit/quote.ts';
import { rateOf, withCurrency, withRate, withTaxName } from '../../../src/core/job/rate-names.ts';
import { deepFreeze } from '../../laws/jobs.ts';
import { sampleJob } from '../job/sample.ts';

const job = deepFreeze(sampleJob());
const bare = setRates({ ...job, quote: { rates: { hourly: 1 } } }, {});

describe('the quote of a job', () => {
  it('is gone when nothing is left of it', () => {
    expect(bare).not.toHaveProperty('quote');
    for (const which of ['terms', 'number', 'validUntil'] as const) {
      expect(setQuoteText(bare, which, 'Thirty days').quote).toEqual({ [which]: 'Thirty days' });
      expect(setQuoteText(setQuoteText(bare, which, 'Thirty days'), which, '')).toEqual(bare);
    }
  });

  it('stays the same job where nothing changes', () => {
    expect(setRates(job, structuredClone(job.quote!.rates!))).toBe(job);
    expect(setQuoteText(job, 'customer', 'A customer')).toBe(job);
    expect(changeTook(job, { line: 'bending', hours: 2.5 }, null)).toBe(job);
  });

  it('takes other texts and extras, and gives them up', () => {
    const two = addExtra(job, { what: 'Journey', amount: 40 });
    expect(setExtra(two, 1, { amount: 45 }).quote!.extras).toEqual([
      { what: 'Paint', amount: 120 },
      { what: 'Journey', amount: 45 },
    ]);
    const taken = addTook(addTook(two, { line: 'extra 1', paid: 90 }), { line: 'extra 2', paid: 50 });
    const { extras, took } = removeExtra(taken, 0).quote!;
    expect(extras).toEqual([{ what: 'Journey', amount: 40 }]);
    expect(took!.filter(({ line }) => line.startsWith('extra'))).toEqual([{ line: 'extra 1', paid: 50 }]);
  });

  it('notes what a line took beside what was noted, changes one entry and leaves the others their day and remark', () => {
    const [first] = job.quote!.took!;
    const more = { line: 'bending', hours: 3, on: '2026-03-05', remark: 'the rest' };
    const two = addTook(job, more);
    expect(two.quote!.took).toEqual([first, more]);
    const changed = changeTook(two, first!, { ...first!, hours: 4 });
    expect(changed.quote!.took).toEqual([{ ...first, hours: 4 }, more]);
    expect(changed.quote!.took![1]).toBe(more);
    const one = changeTook(two, first!, null);
    expect(one.quote!.took).toEqual([more]);
    expect(changeTook(one, more, null).quote).not.toHaveProperty('took');
  });
});

describe('a tax', () => {
  it('is a rate with a name, and goes with its percent', () => {
    const taxed = withTaxName(withRate({ hourly: 60 }, 'tax', 20), 'VAT');
    expect(taxed).toEqual({ hourly: 60, tax: { name: 'VAT', percent: 20 } });
    expect(rateOf(taxed, 'tax')).toBe(20);
    expect(withRate(taxed, 'tax', 7).tax).toEqual({ name: 'VAT', percent: 7 });
    expect(withRate(taxed, 'tax', null)).toEqual({ hourly: 60 });
    expect(withTaxName({ hourly: 60 }, 'VAT')).toEqual({ hourly: 60 });
  });
});

describe('a rate by its name', () => {
  it('is put in, read and taken out again', () => {
    const rates = withRate(withRate(withRate({}, 'hourly', 60), 'cope', 12), 'boltEach', 0.9);
    expect(rates).toEqual({ hourly: 60, minutes: { cope: 12 }, prices: { boltEach: 0.9 } });
    expect((['hourly', 'cope', 'boltEach', 'margin'] as const).map((name) => rateOf(rates, name))).toEqual([
      60,
      12,
      0.9,
      null,
    ]);
    expect(withRate(withRate(withRate(rates, 'cope', null), 'boltEach', null), 'hourly', null)).toEqual({});
    expect(withCurrency(withCurrency({}, 'EUR'), '')).toEqual({});
  });
});
