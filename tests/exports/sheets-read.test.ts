/** That sheets.pdf can be read: no words over other words, none off the page, none too small, whatever job it is of. */
import { describe, expect, it } from 'vitest';
import { unwatched } from '../../src/drawing/going.ts';
import { plainPrint, type PrintSettings } from '../../src/exports/shared/files.ts';
import { sheetsPdf } from '../../src/exports/sheets/sheets.ts';
import { derive, type Derived } from '../../src/core/derive.ts';
import { firstFigures } from '../../src/core/shape/starters/asked.ts';
import { LAYOUTS } from '../../src/core/survey/spots.ts';
import { startCage } from '../../src/core/shape/starters/start-cage.ts';
import { plainly, shopJob } from '../core/shape/starters/cars.ts';
import { demoText } from '../command-line.ts';
import { drawn, LONG } from '../draws.ts';
import { fonts } from './fonts.ts';
import { derivedDemo, derivedFrom } from './jobs.ts';
import { readPdf, type ReadPage } from './pdf.ts';
import { expectReadable } from './readable.ts';

async function pagesOf(derived: Derived, change: Partial<PrintSettings> = {}): Promise<readonly ReadPage[]> {
  return (await readPdf((await sheetsPdf(derived, fonts, { ...plainPrint, ...change }, unwatched)).bytes)).pages;
}

describe('the sheets can be read', () => {
  // On A4 the demo is printed, read and held to the same in sheets.test.ts.
  it('of the demo, on letter', async () => {
    const demo = derivedDemo();
    expectReadable(await pagesOf({ ...demo, tubes: demo.tubes.slice(0, drawn(5, 40)) }, { paper: 'letter' }));
  });

  it('of the demo with general recipes: no notcher and no saw is known', async () => {
    const { tools: _tools, ...job } = JSON.parse(demoText()) as Record<string, unknown>;
    const derived = derivedFrom(JSON.stringify(job));
    expectReadable(await pagesOf({ ...derived, tubes: derived.tubes.slice(0, drawn(5, 40)) }));
  });

  it('of the demo where every name has 60 characters', async () => {
    const job = JSON.parse(demoText()) as Record<string, unknown>;
    const name = (i: number) =>
      `Name number ${i} of sixty letters, no more and no less of it`.padEnd(60, 'x').slice(0, 60);
    for (const list of ['points', 'nodes', 'members', 'sections', 'dies', 'feet', 'envelopes'])
      ((job[list] ?? []) as { name: string }[]).forEach((record, i) => (record.name = name(i)));
    const derived = derivedFrom(JSON.stringify(job));
    expectReadable(await pagesOf({ ...derived, tubes: derived.tubes.slice(0, drawn(6, 40)) }));
  });

  it.each(LONG ? LAYOUTS : [LAYOUTS[1]])('of a cage begun from tape figures, %s', async (layout) => {
    const derivation = derive(startCage(shopJob('mm'), plainly(layout, firstFigures('mm'))));
    if (!derivation.ok) expect.fail(JSON.stringify(derivation.faults));
    const derived = derivation.value;
    expectReadable(await pagesOf({ ...derived, tubes: derived.tubes.slice(0, drawn(6, 60)) }));
  });
});
