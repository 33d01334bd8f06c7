/** measuring.pdf, read back: every place and tape of the car has its row, and each box is empty and wide enough to write in. */
import { describe, expect, it } from 'vitest';
import { derive, type Derived } from '../../src/core/derive.ts';
import { emptyJob } from '../../src/core/job/empty-job.ts';
import { unwatched } from '../../src/drawing/going.ts';
import { plainPrint } from '../../src/exports/shared/files.ts';
import { measuringPdf } from '../../src/exports/sheets/measuring-pdf.ts';
import type { LayoutName } from '../../src/core/survey/spots.ts';
import { demoText } from '../command-line.ts';
import { fonts } from './fonts.ts';
import { derivedFrom } from './jobs.ts';
import { overlapsOf } from './overlap.ts';
import { linesOfPdf, type Drawn } from './pdf-lines.ts';
import { readPdf } from './pdf.ts';

async function sheet(derived: Derived, paper: 'a4' | 'letter' = 'a4', layout?: LayoutName) {
  const { fileName, bytes } = await measuringPdf(derived, fonts, { ...plainPrint, paper }, unwatched, layout);
  expect(fileName).toBe('measuring.pdf');
  const { pages } = await readPdf(bytes);
  const lines = await linesOfPdf(bytes);
  return pages.map((page, i) => ({ ...page, boxes: lines[i]!.filter(isBox).map(edgesOf) }));
}

/** A closed oblong with level and upright sides. */
const isBox = (line: Drawn): boolean =>
  line.length === 5 && line.slice(1).every(([x, y], i) => near(x, line[i]![0]) !== near(y, line[i]![1]));
const near = (a: number, b: number): boolean => Math.abs(a - b) < 0.01;

function edgesOf(line: Drawn) {
  const [xs, ys] = [line.map(([x]) => x), line.map(([, y]) => y)];
  return { left: Math.min(...xs), right: Math.max(...xs), low: Math.min(...ys), high: Math.max(...ys) };
}

/** Half a finger of a pencil's figures: as high as a ruled line, as wide as `36 13/16` by hand, mm. */
const [HIGH, WIDE] = [8, 17];

function expectFillable(pages: Awaited<ReturnType<typeof sheet>>) {
  pages.forEach((page, i) => {
    expect(overlapsOf(page), `page ${i + 1}`).toEqual([]);
    for (const { text, size, x, y, width } of page.texts) {
      expect(size, text).toBeGreaterThanOrEqual(3);
      expect(Math.min(x, page.width - x - width), text).toBeGreaterThanOrEqual(9.9);
      expect(Math.min(y, page.height - y - size), text).toBeGreaterThanOrEqual(7);
    }
    for (const { left, right, low, high } of page.boxes) {
      expect(Math.min(left, page.width - right, low)).toBeGreaterThan(9.9);
      expect(high - low).toBeGreaterThan(HIGH);
      expect(right - left).toBeGreaterThan(WIDE);
      const written = page.texts.filter(
        ({ x, y, width, size }) => x < right && x + width > left && y < high && y + size > low,
      );
      expect(written.map(({ text }) => text)).toEqual([]);
    }
  });
}

const bare = (unit: 'in' | 'mm'): Derived => {
  const derivation = derive(emptyJob(unit));
  return derivation.ok ? derivation.value : expect.fail('an empty job derives');
};

const said = (pages: Awaited<ReturnType<typeof sheet>>): readonly string[] =>
  pages.flatMap(({ texts }) => texts.map(({ text }) => text));

describe('the sheet to take to the car', () => {
  it('of a car that nothing is known of has a box for every figure of the layout', async () => {
    const pages = await sheet(bare('mm'));
    expectFillable(pages);
    // Seven places of two sides and three figures, and a width; two empty rows; six places crossed with another.
    expect(pages.flatMap(({ boxes }) => boxes)).toHaveLength((7 + 2) * 7 + 6 * 2);
    expect(pages.map(({ width, height }) => [Math.round(width), Math.round(height)])).toEqual([
      [210, 297],
      [210, 297],
    ]);
    const words = said(pages);
    // Each place stands on the sketch from the side, and each side of it on the two others.
    for (let place = 1; place <= 7; place++) {
      expect(words.filter((each) => each === String(place))).toHaveLength(2);
      for (const side of ['L', 'R']) expect(words.filter((each) => each === `${place} ${side}`)).toHaveLength(2);
    }
    expect(words).toEqual(
      expect.arrayContaining(['Rear tower', 'Date', 'Car', 'Measured by', 'For: Six-point', '1 L to 3 R']),
    );
    expect(words.filter((each) => each.startsWith('The rule book'))).toHaveLength(pages.length);
  });

  it('of a roll bar asks for the four places behind', async () => {
    const pages = await sheet(bare('in'), 'letter', 'roll-bar');
    expectFillable(pages);
    expect(pages.flatMap(({ boxes }) => boxes)).toHaveLength((4 + 2) * 7 + 3 * 2);
    expect(said(pages)).toContain('All in inches');
    expect(said(pages).filter((each) => each.startsWith('Windscreen'))).toEqual([]);
  });

  it.each(['in', 'mm'] as const)('of the demo in %s asks for its points, each once', async (unit) => {
    const demo = derivedFrom(JSON.stringify({ ...JSON.parse(demoText()), lengthUnit: unit }));
    const pages = await sheet(demo, unit === 'in' ? 'letter' : 'a4');
    expectFillable(pages);
    const { points } = demo.job;
    const boxes = pages.flatMap((page) => page.boxes).length;
    const across = said(pages).filter((each) => / [LR] to \d/u.test(each)).length;
    const widths = boxes - 2 * 7 - across - 3 * points.length;
    // A width of each pair: as many as points stand on the right, where every one of them has its like on the left.
    expect(widths).toBe(points.filter(({ position }) => position[1] < 0).length);
  });

  it('of a job whose points have long names is read as well', async () => {
    const job = JSON.parse(demoText()) as { points: { name: string }[] };
    job.points.forEach((point, i) => (point.name = `Point ${i} of sixty letters, no more and no less of it, left`));
    expectFillable(await sheet(derivedFrom(JSON.stringify(job))));
  });
});
