/**
 * Wraps several to a page, by the lines that an outside reader finds in wraps.pdf: every end once, at full size, its cut line that of the
 * fabrication file, none over another, and scissors find their way between them.
 */
import { describe, expect, it } from 'vitest';
import { unwatched } from '../../src/drawing/going.ts';
import { packed, type Size } from '../../src/drawing/shelves.ts';
import { plainPrint } from '../../src/exports/shared/files.ts';
import { fabrication } from '../../src/exports/tables/fabrication.ts';
import { wrapsPdf } from '../../src/exports/wraps/wraps-pdf.ts';
import { fonts } from './fonts.ts';
import { derivedDemo } from './jobs.ts';
import { readPdf } from './pdf.ts';
import { linesOfPdf, type Drawn } from './pdf-lines.ts';
import { overlapsOf } from './overlap.ts';
import { uniformFrom } from '../reference/oracles/seeded.ts';

const demo = derivedDemo();
const { tubes } = fabrication(demo);
const bytes = wrapsPdf(demo, fonts, plainPrint, unwatched).then((file) => file.bytes);
const read = bytes.then(async (all) => {
  const { pages } = await readPdf(all);
  const lines = await linesOfPdf(all);
  return pages.map((page, i) => ({ ...page, lines: lines[i]! }));
});

interface Box {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

const boxOf = (line: Drawn): Box => ({
  left: Math.min(...line.map(([x]) => x)),
  right: Math.max(...line.map(([x]) => x)),
  bottom: Math.min(...line.map(([, y]) => y)),
  top: Math.max(...line.map(([, y]) => y)),
});

const holds = (box: Box, x: number, y: number): boolean =>
  x > box.left && x < box.right && y > box.bottom && y < box.top;

/** The template's outline: four corners round the end's mark, which is set larger than all else. */
function templatesOn({ texts, lines }: Awaited<typeof read>[number]) {
  const outlines = lines.filter((line) => line.length === 5).map(boxOf);
  return texts
    .filter(({ text, size }) => /^\d+ [AB]$/u.test(text) && Math.abs(size - 7) < 0.01)
    .map(({ text, x, y }) => ({
      mark: text,
      box: outlines.find((box) => holds(box, x, y) && box.right - box.left > 60),
    }));
}

describe('the templates of the demo', () => {
  it('are all there once, with the table on no more than 27 pages, each with its bars', async () => {
    const pages = await read;
    const needed = tubes.flatMap(({ number, ends }) =>
      ends.flatMap(({ tip, throat }, i) => (throat! - tip! > 0.05 ? [`${number} ${'AB'[i]}`] : [])),
    );
    const drawn = pages.flatMap((page) => templatesOn(page).map(({ mark }) => mark));
    expect(drawn.toSorted()).toEqual(needed.toSorted());
    expect(pages.length).toBeLessThanOrEqual(27);
    // Said on the last page, for they lie as the paper has room.
    const words = pages.flatMap(({ texts }) => texts.map(({ text }) => text)).join(' ');
    const index = words.slice(words.indexOf('On which page each template is: '));
    for (const [i, page] of pages.entries())
      for (const { mark } of templatesOn(page)) expect(index).toContain(`${mark}: ${i + 1}`);
    for (const { texts } of pages)
      expect(texts.filter(({ text }) => text === '100 mm' || text === '4 in')).toHaveLength(4);
    expect(pages.flatMap(overlapsOf)).toEqual([]);
  });

  it('stand at full size, the cut line within 0.1 mm of the fabrication file all the way round', async () => {
    let compared = 0;
    let worst = 0;
    for (const page of await read) {
      // One that comes in sheets is drawn in part on each: tests/exports/shared/tiles.test.ts.
      if (page.texts.some(({ text }) => text.includes('Join the sheets'))) continue;
      for (const { mark, box } of templatesOn(page)) {
        const [number, letter] = mark.split(' ');
        const tube = tubes.find((each) => each.number === Number(number))!;
        const { profile, tip, allowance } = tube.ends[letter === 'A' ? 0 : 1];
        const { outerDiameter } = demo.byId.get(tube.id)!.section;
        const turn = Math.PI * (outerDiameter + 0.1);
        expect(box, mark).toBeDefined();
        const { left, right, bottom, top } = box!;
        expect(Math.abs(right - left - turn), mark).toBeLessThan(0.1);
        const within = page.lines.filter((line) =>
          line.every(([x, y]) => x > left - 0.01 && x < right + 0.01 && y > bottom - 0.01 && y < top + 0.01),
        );
        const zero = within.find(
          ([a, b, more]) =>
            more === undefined &&
            a![0] === b![0] &&
            Math.abs(a![1] - bottom) < 0.01 &&
            Math.abs(b![1] - (top - 7)) < 0.01,
        )![0]![0];
        const cut = within.filter((line) => line.length > 100).flat();
        profile.forEach((trim, degree) => {
          if (trim === null) return;
          const x = left + ((((zero - left + (degree / 360) * turn) % turn) + turn) % turn);
          const nearest = cut.reduce((best, each) => (Math.abs(each[0] - x) < Math.abs(best[0] - x) ? each : best));
          // The drawn place at that degree, or at the seam the one a turn on.
          if (Math.abs(nearest[0] - x) > 0.02) return;
          worst = Math.max(worst, Math.abs(nearest[1] - bottom - (trim - tip! + Math.min(allowance, 25))));
          compared += 1;
        });
      }
    }
    expect(compared).toBeGreaterThan(50 * 355);
    expect(worst).toBeLessThan(0.1);
  });

  it('leave room for scissors: 4 mm at least from outline to outline and from bars', async () => {
    for (const page of await read) {
      const boxes = templatesOn(page).flatMap(({ box }) => (box === undefined ? [] : [box]));
      boxes.forEach((a, i) =>
        boxes.slice(i + 1).forEach((b) => {
          const apart = Math.max(a.left - b.right, b.left - a.right, a.bottom - b.top, b.bottom - a.top);
          expect(apart).toBeGreaterThanOrEqual(4 - 1e-3);
        }),
      );
    }
  });

  it('carry on themselves which end of which tube, to which tube, the revision, the line to lay it by and what comes off', async () => {
    let count = 0;
    for (const page of await read) {
      for (const { mark, box } of templatesOn(page)) {
        if (box === undefined) continue;
        const said = page.texts
          .filter(({ x, y }) => holds(box, x, y))
          .map(({ text }) => text)
          .join(' ');
        expect(said, mark).toMatch(/revision [A-Z0-9]{4}/u);
        expect(said, mark).toContain('cut away');
        expect(said, mark).not.toContain('…');
        expect(said, mark).toMatch(/0° (scribed|inside) line/u);
        expect(said, mark).toMatch(/coped to \d+|cut to its/u);
        count += 1;
      }
    }
    expect(count).toBeGreaterThan(50);
  });
});

it('drawings packed lie on the sheet, apart from one another, the sheets in the order of what is first on them', () => {
  const sheet = { width: 178, height: 234 };
  for (let seed = 1; seed <= 60; seed++) {
    const next = uniformFrom(seed);
    const sizes: Size[] = Array.from({ length: 1 + Math.floor(40 * next()) }, () => ({
      width: 20 + 158 * next(),
      height: 15 + 219 * next() ** 2,
    }));
    const put = packed(sizes, sheet, 4);
    expect(put).toHaveLength(sizes.length);
    const firsts: number[] = [];
    put.forEach(({ sheet: on, left, down }, i) => {
      firsts[on] ??= i;
      expect(left >= 0 && left + sizes[i]!.width <= sheet.width).toBe(true);
      expect(down >= 0 && down + sizes[i]!.height <= sheet.height + 1e-9).toBe(true);
      put.slice(0, i).forEach((other, k) => {
        if (other.sheet !== on) return;
        const apart = Math.max(
          left - other.left - sizes[k]!.width,
          other.left - left - sizes[i]!.width,
          down - other.down - sizes[k]!.height,
          other.down - down - sizes[i]!.height,
        );
        expect(apart).toBeGreaterThan(4 - 1e-9);
      });
    });
    expect(firsts).toEqual(firsts.toSorted((a, b) => a - b));
  }
});
