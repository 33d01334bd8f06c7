/** The stick and the table of marks on a hoop's sheet count from one zero, wherever that is: read from the page, figures and lines. */
import { expect, it } from 'vitest';
import { sheetsPdf } from '../../src/exports/sheets/sheets.ts';
import { plainPrint } from '../../src/exports/shared/files.ts';
import { unwatched } from '../../src/drawing/going.ts';
import { demoText } from '../command-line.ts';
import { fonts } from './fonts.ts';
import { derivedFrom, markedAs } from './jobs.ts';
import { linesOfPdf } from './pdf-lines.ts';
import { readPdf } from './pdf.ts';

const mm = derivedFrom(JSON.stringify({ ...JSON.parse(demoText()), lengthUnit: 'mm' }));
const hoop = { ...mm, tubes: mm.tubes.filter(({ id }) => id === 'hoop') };

/** Which way from the zero each of the four bends lies on the stick, end A on the left. */
const WAYS = { A: [1, 1, 1, 1], B: [-1, -1, -1, -1], middle: [-1, -1, 1, 1] } as const;

/** A figure in whole millimetres, with the sign that says on which side of the division the mark lies. */
const read = (words: string): number => Number(/^\d+/u.exec(words)![0]);

it.each(['A', 'B', 'middle'] as const)('from %s', async (from) => {
  const { bytes } = await sheetsPdf(markedAs(hoop, { from }), fonts, plainPrint, unwatched);
  const { pages } = await readPdf(bytes);
  const number = pages.findIndex(({ texts }) => texts.some(({ text }) => text.startsWith('Check after bending')));
  const first = pages.findIndex(({ texts }) => texts.some(({ text }) => text === 'Start of bend, mm'));
  expect(first).toBeGreaterThanOrEqual(0);
  expect(number).toBeGreaterThanOrEqual(first);
  const { texts } = pages[first]!;
  const named = (pattern: RegExp) => texts.filter(({ text }) => pattern.test(text));

  const onStick = named(/^[1-4]: \d/u).map(({ text }) => [Number(text[0]), text.slice(3)] as const);
  // A row's bend in its disc, and its mark in main figures beside it on the same row.
  const marks = named(/^\d+(?:\s[+−])?$/u).filter(({ size, x }) => size > 6.9 && x > 15 && x < 90);
  const discs = named(/^[1-4]$/u).filter(({ x, size }) => x < 22 && size > 4 && size < 6.9);
  const inTable = marks.map((mark) => {
    const disc = discs.toSorted((a, b) => Math.abs(a.y - mark.y) - Math.abs(b.y - mark.y))[0]!;
    return [Number(disc.text), mark.text] as const;
  });
  expect(inTable).toHaveLength(4);
  const byBend = (a: readonly [number, string], b: readonly [number, string]): number => a[0] - b[0];
  expect(onStick.toSorted(byBend)).toEqual(inTable.toSorted(byBend));

  // The lines drawn across the stick lie as far from the zero's as the table's figures say, at the stick's own scale.
  const [zero] = named(/^0$/u);
  const lines = (await linesOfPdf(bytes))[first]!.filter(([a]) => Math.abs(a![1] - zero!.y) < 14);
  const spans = lines.filter((line) => line.length >= 4).map((line) => line.map(([x]) => x));
  const widest = spans.toSorted((a, b) => Math.max(...b) - Math.min(...b) - (Math.max(...a) - Math.min(...a)))[0]!;
  const [left, right] = [Math.min(...widest), Math.max(...widest)];
  const upright = lines.filter((line) => line.length === 2 && Math.abs(line[0]![0] - line[1]![0]) < 0.01);
  const scale = (right - left) / hoop.tubes[0]!.blankLength;
  const at = { A: left, B: right, middle: (left + right) / 2 }[from];
  expect(Math.abs(zero!.x + zero!.width / 2 - at)).toBeLessThan(2);
  for (const [bend, words] of inTable) {
    const place = at + WAYS[from][bend - 1]! * read(words) * scale;
    expect(Math.min(...upright.map((line) => Math.abs(line[0]![0] - place))), `bend ${bend}`).toBeLessThan(0.2);
  }
});
