/** Wrap templates as another program prints them: measured on the raster, at 300 dots an inch. */
import { unwatched } from '../../src/drawing/going.ts';
import { expect, test, type Page } from '@playwright/test';
import { fabrication } from '../../src/exports/tables/fabrication.ts';
import { plainPrint, type PrintSettings } from '../../src/exports/shared/files.ts';
import { wrapsPdf } from '../../src/exports/wraps/wraps-pdf.ts';
import { wrapsSvg } from '../../src/exports/wraps/wraps.ts';
import { derive, type Derived } from '../../src/core/derive.ts';
import { parseJob } from '../../src/core/job/parse.ts';
import { fonts } from '../exports/fonts.ts';
import { dotMiddle, inkAcross, inkDown, longLines, middleOf, openReader, rasterOf, type Raster } from './raster.ts';

function derivedFrom(job: object): Derived {
  const parsed = parseJob(JSON.stringify(job));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  const derivation = derive(parsed.job);
  if (!derivation.ok) throw new Error(JSON.stringify(derivation.faults));
  return derivation.value;
}

/** A branch coped at `included` degrees to a run of 48.3, 4 mm left on there, its other end square. */
function joint(outerDiameter: number, included: number, name = 'Branch'): Derived {
  const angle = (included * Math.PI) / 180;
  const fixed = (id: string, position: number[]) => ({ id, at: { kind: 'fixed', position } });
  return derivedFrom({
    format: 'cagewright/job',
    version: 1,
    name: 'One joint',
    lengthUnit: 'mm',
    sections: [
      { id: 'run', outerDiameter: 48.3, wall: 3 },
      { id: 'branch', outerDiameter, wall: 2 },
    ],
    nodes: [
      fixed('back', [-800, 0, 0]),
      fixed('fore', [800, 0, 0]),
      fixed('joint', [0, 0, 0]),
      fixed('top', [900 * Math.cos(angle), 0, 900 * Math.sin(angle)]),
    ],
    members: [
      { id: 'run', path: ['back', 'fore'], section: 'run', ends: [{ fit: 'square' }, { fit: 'square' }] },
      {
        id: 'branch',
        name,
        path: ['joint', 'top'],
        section: 'branch',
        ends: [{ fit: 'auto', allowance: 4 }, { fit: 'square' }],
      },
    ],
  });
}

/** What the test bars measure, longest last: across at the foot of the sheet, up at its left. */
function barsOf(raster: Raster): { across: number[]; up: number[] } {
  const high = raster.height / (300 / 25.4);
  const lengths = (lines: ReturnType<typeof longLines>, tickInk: (at: number) => ReturnType<typeof inkAcross>) =>
    lines
      .map(({ at, from, to }) => {
        // Between the middles of the strokes at its two ends, taken a millimetre beside the bar.
        const strokes = tickInk(at - 1).map(middleOf);
        const nearest = (place: number) =>
          strokes.reduce((best, each) => (Math.abs(each - place) < Math.abs(best - place) ? each : best));
        return nearest(to) - nearest(from);
      })
      .toSorted((a, b) => a - b);
  const across = longLines(raster.height, (y) => (y > high - 35 ? inkAcross(raster, y) : []), 90);
  const up = longLines(raster.width, (x) => (x < 22 ? inkDown(raster, x) : []), 90);
  return { across: lengths(across, (y) => inkAcross(raster, y)), up: lengths(up, (x) => inkDown(raster, x)) };
}

/** Edges of the only template on the page, mm from the sheet's upper left corner. */
function frameOf(raster: Raster, width: number) {
  const high = raster.height / (300 / 25.4);
  const [top, bottom] = longLines(raster.height, (y) => (y < high - 40 ? inkAcross(raster, y) : []), width - 1);
  const beside = inkAcross(raster, (top!.at + bottom!.at) / 2).map(middleOf);
  const left = beside.find((x) => Math.abs(x - top!.from) < 1)!;
  const right = beside.findLast((x) => Math.abs(x - top!.to) < 1)!;
  // Of both edges the ink shows more than the row of dots: taken in a column near the seam, where nothing else crosses them.
  const down = inkDown(raster, left + 2.5).map(middleOf);
  const fine = (coarse: number) =>
    down.reduce((best, y) => (Math.abs(y - coarse) < Math.abs(best - coarse) ? y : best));
  return { top: fine(top!.at), bottom: fine(bottom!.at), left, right };
}

const PAPERS = { a4: [210, 297], letter: [215.9, 279.4] } as const;

/** Bars, height and cut ordinates of one template, printed on this paper, are true to 0.1 mm. */
async function expectTrue(page: Page, paper: 'a4' | 'letter'): Promise<void> {
  const job = joint(38.1, 60);
  const { bytes } = await wrapsPdf(job, fonts, { ...plainPrint, paper }, unwatched);
  const raster = await rasterOf(page, bytes, 1);
  expect(raster.width / (300 / 25.4)).toBeCloseTo(PAPERS[paper][0], 0);
  expect(raster.height / (300 / 25.4)).toBeCloseTo(PAPERS[paper][1], 0);

  const { across, up } = barsOf(raster);
  for (const bars of [across, up]) {
    expect(bars.length).toBe(2);
    expect(Math.abs(bars[0]! - 100)).toBeLessThan(0.1);
    expect(Math.abs(bars[1]! - 101.6)).toBeLessThan(0.1);
  }

  const turn = Math.PI * 38.2;
  const frame = frameOf(raster, turn);
  expect(Math.abs(frame.right - frame.left - turn)).toBeLessThan(0.1);
  const stated = /Upper edge: square, ([\d.]+) mm from the sawn end/u.exec(raster.text)!;
  expect(Math.abs(frame.bottom - frame.top - Number(stated[1]))).toBeLessThan(0.1);

  const { profile, tip } = fabrication(job).tubes[1]!.ends[0];
  let [measured, worst] = [0, 0];
  for (let phi = -170; phi < 180; phi += 30) {
    const x = dotMiddle(frame.left + ((phi + 180) / 360) * turn);
    const exactPhi = ((x - frame.left) / turn) * 360 - 180;
    const [below, share] = [Math.floor(exactPhi), exactPhi - Math.floor(exactPhi)];
    const trim = (1 - share) * profile[(below + 360) % 360]! + share * profile[(below + 361) % 360]!;
    const expected = frame.bottom - (trim - tip! + 4);
    // The cut line is the only stroke of that weight; ink within it shows its middle.
    const strokes = inkDown(raster, x)
      .filter(({ from, to }) => to - from > 0.3 && to < frame.bottom + 0.5 && from > frame.top + 8)
      .map(middleOf);
    const nearest = strokes.reduce((best, y) => (Math.abs(y - expected) < Math.abs(best - expected) ? y : best));
    worst = Math.max(worst, Math.abs(nearest - expected));
    measured += 1;
  }
  expect(measured).toBe(12);
  expect(worst).toBeLessThan(0.1);
  test.info().annotations.push({ type: `worst ordinate on ${paper}`, description: `${worst.toFixed(3)} mm` });
}

/** A print corrected for a printer that shrinks measures true when it is shrunk so. */
async function expectTrueOnceShrunk(page: Page): Promise<void> {
  const settings: PrintSettings = { paper: 'a4', printed: { x: 0.97, y: 0.985 } };
  const { bytes } = await wrapsPdf(joint(38.1, 60), fonts, settings, unwatched);
  const raster = await rasterOf(page, bytes, 1);
  const { across, up } = barsOf(raster);
  expect(across.map((bar) => Math.abs(bar * 0.97))).toEqual([expect.closeTo(100, 1), expect.closeTo(101.6, 1)]);
  expect(up.map((bar) => Math.abs(bar * 0.985))).toEqual([expect.closeTo(100, 1), expect.closeTo(101.6, 1)]);
  const turn = Math.PI * 38.2;
  const frame = frameOf(raster, turn);
  expect(Math.abs((frame.right - frame.left) * 0.97 - turn)).toBeLessThan(0.1);
  const stated = /Upper edge: square, ([\d.]+) mm from the sawn end/u.exec(raster.text)!;
  expect(Math.abs((frame.bottom - frame.top) * 0.985 - Number(stated[1]))).toBeLessThan(0.1);
}

/** A template wider than the page lies along it; its turn is true to a pen. */
async function expectToLieAlong(page: Page): Promise<void> {
  const { bytes } = await wrapsPdf(joint(63.5, 80), fonts, plainPrint, unwatched);
  const along = await rasterOf(page, bytes, 1);
  const turn = Math.PI * 63.6;
  const lines = longLines(along.width, (x) => (x > 24 ? inkDown(along, x) : []), turn - 1);
  expect(lines.length).toBeGreaterThanOrEqual(2);
  const [edge] = lines;
  expect(Math.abs(edge!.to - edge!.from - turn)).toBeLessThan(0.4); // ends of the stroke: half a pen more on each
}

// What is said on it is read in tests/exports/templates.test.ts, without a browser.
test('wraps.pdf, printed, is true on either paper, corrected for a printer, and where it lies along the page', async ({
  page,
}) => {
  await openReader(page);
  for (const paper of ['a4', 'letter'] as const) await test.step(paper, () => expectTrue(page, paper));
  await test.step('corrected for a printer that shrinks', () => expectTrueOnceShrunk(page));
  await test.step('along the page', () => expectToLieAlong(page));
});

test('wraps/*.svg are read by an XML parser, at full size, whatever the names', async ({ page }) => {
  await openReader(page);
  const job = joint(38.1, 60, '<script>alert(1)</script> & "quoted" \u202e../\n🔥');
  const { profile } = fabrication(job).tubes[1]!.ends[0];
  const files = await wrapsSvg(job, unwatched);
  const texts = files.map(({ bytes }) => new TextDecoder().decode(bytes));
  const read = await page.evaluate(
    (sources) =>
      sources.map((source) => {
        const parsed = new DOMParser().parseFromString(source, 'image/svg+xml');
        const svg = document.importNode(parsed.documentElement, true) as unknown as SVGSVGElement;
        document.body.append(svg);
        const outline = svg.querySelector<SVGPathElement>('#CUT path')!;
        const box = outline.getBBox();
        const places = outline
          .getAttribute('d')!
          .replace(/[MZ]/gu, '')
          .split('L')
          .map((place) => place.split(' ').map(Number));
        return {
          broken: parsed.querySelector('parsererror') !== null,
          scripts: parsed.querySelectorAll('script, foreignObject, a, image').length,
          title: parsed.querySelector('title')!.textContent,
          shown: svg.getBoundingClientRect().width,
          closed: outline.getAttribute('d')!.endsWith('Z'),
          width: box.width,
          places,
        };
      }),
    texts,
  );
  expect(read.length).toBe(4);
  for (const each of read) expect(each).toMatchObject({ broken: false, scripts: 0, closed: true });
  const branch = read[2]!;
  expect(branch.title).toContain('<script>alert(1)</script>');
  expect(branch.width).toBeCloseTo(Math.PI * 38.2, 2);
  expect(branch.shown).toBeCloseTo((Math.PI * 38.2 * 96) / 25.4, 1);
  const at = (phi: number) => {
    const x = ((phi + 180) / 360) * Math.PI * 38.2;
    return branch.places.reduce((best, each) => (Math.abs(each[0]! - x) < Math.abs(best[0]! - x) ? each : best))[1]!;
  };
  for (let phi = -170; phi < 180; phi += 30) {
    // y runs down in SVG.
    expect(at(0) - at(phi)).toBeCloseTo(profile[(phi + 360) % 360]! - profile[0]!, 2);
  }
});
