/** tack-up.pdf, read back: every tape and diagonal of the fabrication file stands there, as large as it must, under its own tube. */
import { describe, expect, it } from 'vitest';
import { unwatched } from '../../src/drawing/going.ts';
import { lengthFigure } from '../../src/drawing/figures.ts';
import { plainPrint } from '../../src/exports/shared/files.ts';
import { tackUpPdf } from '../../src/exports/sheets/tack-up-pdf.ts';
import { fabrication } from '../../src/exports/tables/fabrication.ts';
import { demoText } from '../command-line.ts';
import { derived } from '../core/frame.ts';
import { fonts } from './fonts.ts';
import { derivedFrom } from './jobs.ts';
import { overlapsOf } from './overlap.ts';
import { readPdf } from './pdf.ts';

const TITLE = 'Setting up by tape';

async function pagesOf(frame: ReturnType<typeof derivedFrom>, paper: 'a4' | 'letter' = 'a4') {
  const { bytes } = await tackUpPdf(frame, fonts, { ...plainPrint, paper }, unwatched);
  const { pages } = await readPdf(bytes);
  expect(pages.every(({ texts }) => texts.some(({ text }) => text.startsWith(`${TITLE}:`)))).toBe(true);
  return pages;
}

describe('the pages that a cage is set up by', () => {
  it.each(['in', 'mm'] as const)(
    'of the demo in %s have every tape, in build order, and the diagonals of every bay',
    async (unit) => {
      const demo = derivedFrom(JSON.stringify({ ...JSON.parse(demoText()), lengthUnit: unit }));
      const pages = await pagesOf(demo, unit === 'in' ? 'letter' : 'a4');
      expect(pages.length).toBeLessThanOrEqual(7);
      const { tackUp } = fabrication(demo);
      // Figures are the only bold letters of that size.
      const shown = pages
        .flatMap(({ texts }) => texts.filter(({ size, text }) => Math.abs(size - 5.3) < 0.01 && /\d/u.test(text)))
        .flatMap(({ text }) => text.split(/(?<= (?:in|mm)) /u));
      const wanted = [
        ...tackUp.ends.flatMap(({ tapes }) => tapes),
        ...tackUp.bays.flatMap(({ tapes }) => tapes.map((tape) => ({ tape }))),
      ];
      expect(shown).toEqual(wanted.map(({ tape }) => lengthFigure(tape, unit)));
      for (const page of pages) {
        expect(overlapsOf(page)).toEqual([]);
        for (const { text, x, width } of page.texts) {
          expect(x + width, text).toBeLessThan(page.width - 9.5);
          expect(text).not.toContain('…');
        }
      }
      const said = pages.flatMap(({ texts }) => texts.map(({ text }) => text)).join(' ');
      expect(said).toContain('Stands plumb');
      for (const { number, name } of demo.tubes) expect(said).toContain(`${number} ${name}`);
      for (const { to } of tackUp.ends[0]!.tapes)
        expect(said).toContain(`mark on the car for ${demo.byId.get(to.tube)!.number}`);
    },
  );

  it('of a job without a tube say so, on one page', async () => {
    const pages = await pagesOf(derived({ nodes: {}, members: [] }));
    expect(pages).toHaveLength(1);
    expect(pages[0]!.texts.map(({ text }) => text).join(' ')).toContain('There is no tube yet.');
  });

  it('say of an end that nothing fixes how it is set, and of a cage without bays that it has none', async () => {
    const frame = derived({
      nodes: { a: [0, 0, 0], b: [0, 0, 900], c: [0, 0, 500], d: [700, 0, 500] },
      members: [
        { id: 'post', path: ['a', 'b'], ends: [{ fit: 'square' }, { fit: 'square' }] },
        { id: 'rail', path: ['c', 'd'] },
      ],
    });
    const said = (await pagesOf(frame)).flatMap(({ texts }) => texts.map(({ text }) => text)).join(' ');
    expect(said).toContain('no three tapes fix this end');
    expect(said).toContain('close a bay');
  });
});
