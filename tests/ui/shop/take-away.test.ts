/** What is kept on the machine is taken on no trust, and what the printed bars say is turned into a scale the right way round. */
import { describe, expect, it } from 'vitest';
import { FORMATS, PRODUCTS, productsIn, productsOf, type Product } from '../../../src/exports/products/catalogue.ts';
import { correctionInWords, KINDS, readChosen, zipName } from '../../../src/ui/shop/take-away.ts';
import { printSettings, readPrint } from '../../../src/ui/kit/print.ts';

const WITH_STICKS = { stickSorts: [{ id: 'k', section: 's', length: 6000 }] };

describe('what is offered', () => {
  it('is every product, each once', () => {
    const offered = KINDS.flatMap(({ format }) => productsIn(format, WITH_STICKS));
    expect(offered).toHaveLength(Object.keys(PRODUCTS).length);
    expect(new Set(offered)).toEqual(new Set(Object.keys(PRODUCTS)));
    expect(productsOf(FORMATS, WITH_STICKS)).toHaveLength(offered.length);
    expect(productsOf(FORMATS, { stickSorts: [] })).toEqual(
      productsOf(FORMATS, WITH_STICKS).filter((product) => product !== 'stock.csv' && product !== 'cut-list.pdf'),
    );
    expect(productsOf([], WITH_STICKS)).toEqual<Product[]>(['fabrication.json']);
  });

  it('goes into a zip named as the job file is', () => {
    expect(zipName('Gravel saloon.cagewright.json')).toBe('Gravel saloon.zip');
    expect(zipName('old.json')).toBe('old.zip');
  });
});

describe('what was kept', () => {
  it.each([null, 'pdf', 7, { length: 3 }])('of the ticks, where it is %j, is all of them', (kept) => {
    expect(readChosen(kept)).toEqual([...FORMATS]);
  });

  it('of the ticks holds known formats only, also none', () => {
    expect(readChosen(['step', 'exe', 'csv', 4])).toEqual(['csv', 'step']);
    expect(readChosen([])).toEqual([]);
  });

  it.each([null, [], { paper: 'a3', across: 0, up: Infinity }, { across: '98', up: 300 }])(
    'of the print, where it is %j, is a true printer and the paper of the job',
    (kept) => {
      expect(readPrint(kept, true)).toEqual({ paper: 'letter', across: 100, up: 100 });
      expect(readPrint(kept, false)).toEqual({ paper: 'a4', across: 100, up: 100 });
    },
  );
});

describe('a printer that makes 100 mm only 98 across', () => {
  const print = readPrint({ paper: 'a4', across: 98, up: 100 }, false);

  it('is given as the ratio that drawings are divided by', () => {
    expect(printSettings(print)).toEqual({ paper: 'a4', printed: { x: 0.98, y: 1 } });
  });

  it('has its next print made larger that way, and only that way', () => {
    // 100 / 98
    expect(correctionInWords(print)).toContain('102.04 % across and 100.00 % up');
    expect(correctionInWords({ ...print, across: 100 })).toBeNull();
  });
});
