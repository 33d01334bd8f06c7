/** The code on a tube's sheet, read back from the squares of the PDF by another library's reader: it names the job, the tubes of the page and their revisions. */
import jsQR from 'jsqr';
import { describe, expect, it } from 'vitest';
import { readSheetHash, sheetHash } from '../../src/core/job/sheet-address.ts';
import type { Derived } from '../../src/core/derive.ts';
import { revisionOf } from '../../src/core/solve/revision.ts';
import { unwatched } from '../../src/drawing/going.ts';
import { plainPrint } from '../../src/exports/shared/files.ts';
import { sheetsPdf } from '../../src/exports/sheets/sheets.ts';
import { LONG } from '../draws.ts';
import { fonts } from './fonts.ts';
import { derivedDemo } from './jobs.ts';
import { linesOfPdf, type Drawn } from './pdf-lines.ts';
import { readPdf } from './pdf.ts';

const demo = derivedDemo();
const SIDE = 18;
const QUIET = 2;
const PIXELS = 12;

/** What stands in the lower right corner of the page as a camera has it, and what a reader makes of that. */
function readCode(lines: readonly Drawn[], width: number): string | null {
  const [left, bottom] = [width - 10 - SIDE - QUIET, 8 - QUIET];
  const count = Math.round((SIDE + 2 * QUIET) * PIXELS);
  const picture = new Uint8ClampedArray(count * count * 4).fill(255);
  for (const line of lines) {
    const [xs, ys] = [line.map(([x]) => x - left), line.map(([, y]) => y - bottom)];
    if (Math.min(...xs) < 0 || Math.min(...ys) < 0 || Math.max(...ys) > SIDE + 2 * QUIET) continue;
    const [from, to] = [Math.min(...xs), Math.max(...xs)].map((x) => Math.round(x * PIXELS)) as [number, number];
    const [low, high] = [Math.min(...ys), Math.max(...ys)].map((y) => Math.round(y * PIXELS)) as [number, number];
    for (let y = low; y < high; y += 1) {
      for (let x = from; x < to; x += 1)
        picture.fill(0, 4 * ((count - 1 - y) * count + x), 4 * ((count - 1 - y) * count + x) + 3);
    }
  }
  return jsQR(picture, count, count)?.data ?? null;
}

/** Of each tube's page, the numbers of its tubes as they are printed at its foot, and what its code says. */
async function codesOf(shown: Derived, address?: string) {
  const settings = { ...plainPrint, ...(address !== undefined && { address }) };
  const { bytes } = await sheetsPdf(shown, fonts, settings, unwatched);
  const [lines, { pages }] = [await linesOfPdf(bytes), await readPdf(bytes)];
  return pages.flatMap(({ texts, width }, i) => {
    const foot = texts.find(({ text }) => /^Tubes? \d+(?:: \d+)? of \d/u.test(text))?.text;
    if (foot === undefined) return [];
    const numbers = Array.from(foot.matchAll(/(?:Tubes?|and) (\d+)/gu), ([, number]) => Number(number));
    return [{ numbers, code: readCode(lines[i]!, width) }];
  });
}

function expectNamed({ numbers, code }: { numbers: readonly number[]; code: string | null }, address: string): void {
  const [before, hash] = code!.split('#');
  expect(before).toBe(address);
  const words = new URLSearchParams(hash);
  const revisions = words.getAll('revision');
  const tubes = numbers.map((number) => demo.tubes.find((tube) => tube.number === number)!);
  expect(words.getAll('tube').map((id, i) => [id, revisions[i]])).toEqual(
    tubes.map((tube) => [tube.id, revisionOf(demo.job, tube)]),
  );
  expect(words.get('job')).toBe('Gravel saloon, full cage');
}

describe('the code on a sheet', () => {
  it('names the tubes that stand on the page, one or two, and their revisions', async () => {
    // A bent one, and straight ones of which two share a page.
    const tubes = LONG ? demo.tubes : [demo.tubes[0]!, ...demo.tubes.slice(21, 25)];
    const pages = await codesOf({ ...demo, tubes });
    expect(pages.some(({ numbers }) => numbers.length === 2)).toBe(true);
    expect(new Set(pages.flatMap(({ numbers }) => numbers)).size).toBe(tubes.length);
    for (const page of pages) expectNamed(page, 'cagewright:');
  });

  it('stands behind the address of the page where one prints it', async () => {
    const address = 'https://a-rather-long-name.of-a-shop.example/tools/cagewright/';
    const [page] = await codesOf({ ...demo, tubes: demo.tubes.slice(0, 1) }, address);
    expectNamed(page!, address);
  });
});

describe('what a code says', () => {
  it('comes back as it went, whatever the names', () => {
    for (const [id, job] of [
      ["stay'", 'A & B = C'],
      ['bar~2', 'Käfig #7 + 100 %'],
      ['漢', ''],
    ] as const) {
      const sheet = { job, tubes: [{ id, revision: '7K2F' }] };
      expect(readSheetHash(sheetHash(sheet))).toEqual(sheet);
    }
    expect(readSheetHash(sheetHash({ job: '🔧'.repeat(40), tubes: [{ id: 'a', revision: 'b' }] }))!.job).toBe(
      '🔧'.repeat(24),
    );
  });

  it.each([
    '',
    '#',
    '#tube=a',
    '#revision=a',
    '#tube=a&tube=b&revision=c',
    `#tube=${'a'.repeat(3000)}&revision=b`,
    '#tube=a&revision=b'.repeat(9),
  ])('is nothing where it is no sheet’s: %#', (hash) => expect(readSheetHash(hash)).toBeNull());
});
