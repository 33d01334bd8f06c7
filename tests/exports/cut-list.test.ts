/** cut-list.pdf, read back: what the saw cannot do is said at its stick, and a batch that no stick has at its section. */
import { expect, it } from 'vitest';
import { plansOf } from '../../src/core/stock/of-job.ts';
import { unwatched } from '../../src/drawing/going.ts';
import { cutListPdf } from '../../src/exports/sheets/cut-list-pdf.ts';
import { plainPrint } from '../../src/exports/shared/files.ts';
import { fewTubes } from '../few-tubes.ts';
import { fonts } from './fonts.ts';
import { derivedFrom } from './jobs.ts';
import { readPdf } from './pdf.ts';

async function textOf(stock: object, spares: readonly object[]): Promise<string> {
  const job = JSON.parse(fewTubes()) as { readonly sections: readonly object[] };
  const section = { id: 'bar', name: 'Bar', outerDiameter: 25.4, wall: 2.1, material: '' };
  const frame = derivedFrom(
    JSON.stringify({
      ...job,
      lengthUnit: 'mm',
      sections: [...job.sections, section],
      stock: { ...stock, spares: spares.map((spare) => ({ section: 'bar', count: 1, ...spare })) },
    }),
  );
  const bars = (await plansOf(frame)).filter((plan) => plan.section === 'bar');
  const { bytes } = await cutListPdf(frame, bars, fonts, plainPrint, unwatched);
  const { pages } = await readPdf(bytes);
  return pages
    .flatMap(({ texts }) => texts.map(({ text }) => text))
    .join(' ')
    .replace(/\s+/gu, ' ');
}

const bar = (length: number, more: object = {}) => ({ id: `k${length}`, section: 'bar', length, ...more });

it('less than the blade behind the last part is ground; nothing there is no cut; more is sawn', async () => {
  // 2000 - 10 squared off - 1000 - 2.5 leaves 987.5 for the second part.
  const of = (second: number) =>
    textOf({ kerf: 2.5, squareOff: 10, sticks: [bar(2000)] }, [{ length: 1000 }, { length: second }]);
  const short = await of(986.2);
  expect(short).toContain('Nothing left. Behind the last part 1.3 mm of the stick is left, less than the blade eats');
  expect(short).toContain('grind it to length');
  expect(await of(987.5)).toContain('its end is the stick’s own');
  const sawn = await of(900);
  expect(sawn).toContain('85.0 mm left');
  expect(sawn).not.toMatch(/grind|its end is/u);
});

it('a squaring cut of less than the blade is ground, too', async () => {
  const text = await textOf({ kerf: 2.5, squareOff: 1, sticks: [bar(2000)] }, [{ length: 1000 }]);
  expect(text).toContain('First grind one end of each stick square: 1.0 mm, less than the blade eats');
});

it('a batch that no stick of the section has is named, and one of which there are too few is not so', async () => {
  const of = (batch: string) =>
    textOf({ sticks: [bar(700, { batch: 'H-204', count: 1 })] }, [
      { length: 600, batch },
      { length: 600, batch },
    ]);
  expect(await of('K-9')).toContain('No stick of Bar is of batch K-9');
  const few = await of('H-204');
  expect(few).toContain('of batch H-204');
  expect(few).not.toContain('No stick of Bar is');
});
