/** Figures by which no cage can be begun, each named, and what the others come to at the edge. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { derive } from '../../../../src/core/derive.ts';
import { readAgain } from '../../../../src/core/job/parse.ts';
import { firstFigures, FIRST_BARS, type Asked, type FigureName } from '../../../../src/core/shape/starters/asked.ts';
import { LAYOUTS } from '../../../../src/core/survey/spots.ts';
import { lacksDoors, startCage } from '../../../../src/core/shape/starters/start-cage.ts';
import { startTroubles, type StartTrouble } from '../../../../src/core/shape/starters/trouble.ts';
import { START_TROUBLE_WORDS } from '../../../../src/core/words/starters.ts';
import { drawn } from '../../../draws.ts';
import { asked, plainly, shopJob } from './cars.ts';

const shop = shopJob('mm');

const withFigures = (of: Asked, figures: Partial<Record<FigureName, number>>): Asked => ({
  ...of,
  figures: {
    ...of.figures,
    ...Object.fromEntries(Object.entries(figures).map(([name, value]) => [name, { value, guessed: false }])),
  },
});

const usual = plainly('six-point', firstFigures('mm'));

/** The usual car with one figure that nobody's tape says. */
const ODD: Readonly<Record<Exclude<StartTrouble, 'not-made'>, Partial<Record<FigureName, number>>>> = {
  'roof-too-low': { beltHeight: 150 },
  'roof-too-wide': { roofWidth: 1500 },
  'belt-too-narrow': { floorWidth: 500 },
  'tower-too-near': { towerBehind: 150 },
  'tower-too-high': { towerHeight: 1000 },
  'screen-too-near': { screenTopAhead: 100 },
  'screen-foot-too-near': { screenFootAhead: 500 },
  'screen-foot-too-high': { screenFootHeight: 950 },
  'front-foot-too-high': { frontFootHeight: 600 },
  'harness-off-hoop': { harnessHeight: 100 },
  'gap-too-wide': { gap: 300 },
  'front-too-narrow': { screenTopWidth: 400 },
};

test.each(Object.entries(ODD))('%s, and nothing else', (trouble, figures) => {
  expect(startTroubles(shop, usual)).toEqual([]);
  expect(startTroubles(shop, withFigures(usual, figures))).toEqual([trouble]);
  expect(START_TROUBLE_WORDS[trouble as StartTrouble]).not.toBe('');
});

test('a gap that is not refused leaves numbers that a job file holds', () => {
  const cars = fc.sample(fc.tuple(asked, fc.integer({ min: 1, max: 1500 })), { seed: 3, numRuns: drawn(40, 400) });
  let begun = 0;
  for (const [car, gap] of cars) {
    const odd = withFigures(car, { gap });
    if (startTroubles(shop, odd).length > 0) continue;
    begun += 1;
    const draft = startCage(shop, odd);
    expect(readAgain(draft, { file: shop, job: shop }), JSON.stringify(odd)).not.toBe(null);
  }
  expect(begun).toBeGreaterThan(0);
});

test.each(LAYOUTS.slice(1))('%s: level door bars keep clear of sill and dash bar, on short pillars too', (layout) => {
  for (let screenFootHeight = 250; screenFootHeight <= 450; screenFootHeight += 25) {
    const bars = { ...FIRST_BARS, doors: 'two' } as const;
    const car = withFigures({ ...plainly(layout, firstFigures('mm')), bars }, { screenFootHeight });
    const job = startCage(shop, car);
    const frame = derive(job);
    const errors = frame.ok ? frame.value.findings.filter(({ severity }) => severity === 'error') : frame.faults;
    expect(errors, `${screenFootHeight}`).toEqual([]);
    expect(lacksDoors(car, job)).toBe(!job.members.some(({ id }) => id === 'door-1'));
  }
});
