/** What is said of a cutting plan. */
import { describe, expect, it } from 'vitest';
import { leastInWords } from '../../../src/core/words/stock.ts';

describe('how good a plan is', () => {
  it('is proven where the cost is the least to the last figure, and of sticks that cost nothing too', () => {
    expect(leastInWords({ cost: 80, leastCost: 80 }, [{ cost: 80 }])).toBe('Proven: no plan costs less.');
    expect(leastInWords({ cost: 0, leastCost: 0 }, [{ cost: 0 }])).toBe('Proven: no plan costs less.');
    expect(leastInWords({ cost: 6096, leastCost: 6096 }, [{}])).toBe('Proven: no plan uses less stick.');
  });

  it('is not where it is anything more', () => {
    expect(leastInWords({ cost: 80, leastCost: 80 - 1e-9 }, [{ cost: 80 }])).toContain('less than 0.1 % over');
    expect(leastInWords({ cost: 80, leastCost: 79 }, [{ cost: 80 }])).toContain('1.3 % over');
  });

  it('is not where some sticks of the section have a price and some have none', () => {
    expect(leastInWords({ cost: 80, leastCost: 80 }, [{ cost: 80 }, {}])).toMatch(/^Perhaps not .* have no price/u);
  });
});
