/** A full-size layout as another program prints it: a hoop's leg measured across, two sheets joined by their crosses. */
import { unwatched } from '../../src/drawing/going.ts';
import { derive } from '../../src/core/derive.ts';
import { parseJob } from '../../src/core/job/parse.ts';
import { plainPrint } from '../../src/exports/shared/files.ts';
import { layoutPdf } from '../../src/exports/layout/layout-pdf.ts';
import { expect, test } from '@playwright/test';
import { fonts } from '../exports/fonts.ts';
import { inkAcross, inkDown, longLines, middleOf, openReader, rasterOf, textOf, type Ink } from './raster.ts';

/** Feet 700 apart, 400 high, right angles on CLR 152.4. */
function hoop() {
  const nodes = Object.entries({ a: [0, -350, 0], b: [0, -350, 400], c: [0, 350, 400], d: [0, 350, 0] });
  const parsed = parseJob(
    JSON.stringify({
      format: 'cagewright/job',
      version: 1,
      name: 'Hoop',
      sections: [{ id: 'tube', outerDiameter: 44.45, wall: 3 }],
      dies: [{ id: 'die', outerDiameter: 44.45, centrelineRadius: 152.4 }],
      nodes: nodes.map(([id, position]) => ({ id, at: { kind: 'fixed', position } })),
      members: [
        {
          id: 'hoop',
          name: 'Hoop',
          path: ['a', 'b', 'c', 'd'],
          section: 'tube',
          die: 'die',
          ends: [{ fit: 'square' }, { fit: 'square' }],
        },
      ],
    }),
  );
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  const derivation = derive(parsed.job);
  if (!derivation.ok) throw new Error(JSON.stringify(derivation.faults));
  return derivation.value;
}

test('both edges stand a diameter apart, and go on at the crosses from sheet to sheet', async ({ page }) => {
  await openReader(page);
  const { bytes } = await layoutPdf(hoop(), fonts, plainPrint, unwatched);
  const texts = await textOf(page, bytes);
  const sheet = (name: string): number => texts.findIndex((text) => text.includes(`sheet ${name} `)) + 1;
  // The page to strike it on the floor by comes first, then the map of the sheets at full size.
  expect(texts[1]).toContain('map of');

  // The leg of end A: two upright edges, the centreline half-way.
  const first = await rasterOf(page, bytes, sheet('B1'));
  const [leg] = longLines(first.width, (x) => (x > 60 ? inkDown(first, x) : []), 40);
  const across = inkAcross(first, (leg!.from + leg!.to) / 2).map(middleOf);
  const has = (x: number): boolean => across.some((each) => Math.abs(each - x) < 0.1);
  expect(across.filter((x) => has(x + 44.45) && has(x + 44.45 / 2)).length).toBe(1);

  // The top of the hoop runs over A1 and A2: laid on one another at their crosses, its edges go on at the same height.
  const [one, two] = [await rasterOf(page, bytes, sheet('A2')), await rasterOf(page, bytes, sheet('A3'))];
  const level = (ink: readonly Ink[]): number[] => ink.map(middleOf);
  const joint = (raster: typeof one, side: 'left' | 'right') => {
    // The arms of a cross: a level stroke of 8 mm within a sheet's outermost 20 mm.
    const width = raster.width / (300 / 25.4);
    const strokes = longLines(
      raster.height,
      (y) =>
        inkAcross(raster, y).filter(({ from, to }) => {
          const near = side === 'left' ? from > 20 && to < 42 : from > width - 28;
          return near && to - from > 7.5 && to - from < 9;
        }),
      7.5,
    );
    return strokes.map(({ at, from, to }) => ({ x: (from + to) / 2, y: at }));
  };
  const [crossesOne, crossesTwo] = [joint(one, 'right'), joint(two, 'left')];
  expect(crossesOne.length).toBe(2);
  expect(crossesTwo.length).toBe(2);
  for (const i of [0, 1]) expect(Math.abs(crossesOne[i]!.y - crossesTwo[i]!.y)).toBeLessThan(0.1);
  const besideOne = level(inkDown(one, crossesOne[0]!.x - 3)).filter((y) => y < 200);
  const besideTwo = level(inkDown(two, crossesTwo[0]!.x + 3)).filter((y) => y < 200);
  const shared = besideOne.filter((y) => besideTwo.some((other) => Math.abs(other - y) < 0.1));
  expect(shared.length).toBeGreaterThanOrEqual(3);
});
