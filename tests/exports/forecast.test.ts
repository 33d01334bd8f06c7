/** The forecast of fit in sheets.pdf, as pdf.js reads it, and in the fabrication file. */
import { expect, it } from 'vitest';
import { forecastFit } from '../../src/core/forecast/forecast.ts';
import { jointInWords } from '../../src/core/words/forecast.ts';
import { gapInWords } from '../../src/core/words/gaping.ts';
import { unwatched } from '../../src/drawing/going.ts';
import { makeFiles, plainSetting, type Supplies } from '../../src/exports/products/formats.ts';
import { fewTubes } from '../few-tubes.ts';
import { fonts } from './fonts.ts';
import { derivedFrom } from './jobs.ts';
import { readPdf } from './pdf.ts';

const supplies: Supplies = {
  fonts: async () => fonts,
  solver: () => Promise.reject(new Error('not asked for')),
  kernel: () => Promise.reject(new Error('no solids here')),
};

it('where it is asked for, a page says of every joint what the fabrication file says, worst first', async () => {
  const derived = derivedFrom(fewTubes());
  const filesWith = (forecast: boolean) =>
    makeFiles(derived, ['fabrication.json', 'sheets.pdf'], { ...plainSetting, forecast }, supplies, () =>
      unwatched(0, 0),
    );
  const [json, pdf] = await filesWith(true);
  const { joints } = forecastFit(derived);
  const written = JSON.parse(new TextDecoder().decode(json!.bytes)) as { forecast: { joints: unknown[] } };
  expect(written.forecast.joints).toEqual(JSON.parse(JSON.stringify(joints)));

  const wordsOf = async (bytes: Uint8Array) =>
    (await readPdf(bytes)).pages.map(({ texts }) =>
      texts
        .map(({ text }) => text)
        .join(' ')
        .replaceAll(/\s+/gu, ' '),
    );
  const page = (await wordsOf(pdf!.bytes)).find((words) => words.startsWith('Forecast of fit'))!;
  const places = joints.map((joint) =>
    page.indexOf(`${jointInWords(derived, joint)}: ${gapInWords(joint.gap, derived.job.lengthUnit)}`),
  );
  expect(places.filter((place) => place < 0)).toEqual([]);
  expect(places).toEqual(places.toSorted((a, b) => a - b));

  const [plainJson, plainPdf] = await filesWith(false);
  expect(JSON.parse(new TextDecoder().decode(plainJson!.bytes))).not.toHaveProperty('forecast');
  expect((await wordsOf(plainPdf!.bytes)).some((words) => words.includes('Forecast of fit'))).toBe(false);
});
