/**
 * Flat patterns as files for a machine that cuts paper, film or sheet: wraps.dxf, and wraps/*.svg, one an end. At full size. Files
 * are named by the inspector's number and the end, never by what somebody typed.
 */
import type { Going } from '../../drawing/going.ts';
import { WHO_DECIDES } from '../../core/words/cautions.ts';
import type { Derived } from '../../core/derive.ts';
import { paperWrap, type Surface } from '../../core/cope/wrap.ts';
import { dxfText, type DxfLayer } from '../../drawing/dxf.ts';
import { moved } from '../../drawing/move.ts';
import { shelved } from '../../drawing/shelves.ts';
import { words } from '../../drawing/strokes.ts';
import { svgText } from '../../drawing/svg.ts';
import type { Sheet } from '../../drawing/types.ts';
import type { ExportFile } from '../shared/files.ts';
import { wrapPattern } from './wrap-pattern.ts';
import { numbered } from '../../core/words/ends.ts';
import { endMark, endsOf, fitInWords, letterOf, type EndOf } from '../shared/wrap-words.ts';

const LAYERS: readonly DxfLayer[] = [
  { name: 'CUT', colour: 1 },
  { name: 'CUT_OPEN', colour: 6 },
  { name: 'MARK', colour: 5 },
  { name: 'TEXT', colour: 3 },
];

/** A sheet of the usual width; it is as long as it must be. mm. */
const SHEET_WIDTH = 1200;
const GAP = 10;

/** One drawing of every end, in rows, in the order of the tubes. */
export async function wrapsDxf(derived: Derived, going: Going, surface: Surface = 'outer'): Promise<ExportFile> {
  const { patterns, without } = await patternsOf(derived, going, surface);
  const sheets = patterns.map(({ sheet }) => sheet);
  const places = shelved(sheets, { width: SHEET_WIDTH, height: Infinity }, GAP);
  const notes = [...(without.length > 0 ? [`Nothing reaches: ${without.map(endMark).join(', ')}`] : []), WHO_DECIDES];
  const foot = 4 + 6 * notes.length;
  const height = foot + Math.max(0, ...sheets.map((sheet, i) => places[i]!.down + sheet.height));
  const marks = sheets.flatMap((sheet, i) =>
    moved(sheet.marks, places[i]!.left, height - places[i]!.down - sheet.height),
  );
  const written = notes.map((note, i) => words('TEXT', 0, 2 + 6 * (notes.length - 1 - i), note, 4));
  const text = dxfText({ width: SHEET_WIDTH, height, marks: [...marks, ...written] }, LAYERS);
  return { fileName: 'wraps.dxf', bytes: utf8(text) };
}

/** wraps/12-B.svg: one an end; none for an end that nothing reaches. */
export async function wrapsSvg(
  derived: Derived,
  going: Going,
  surface: Surface = 'outer',
): Promise<readonly ExportFile[]> {
  const { patterns } = await patternsOf(derived, going, surface);
  return patterns.map(({ end, sheet }) => ({
    fileName: `wraps/${end.tube.number}-${letterOf(end)}.svg`,
    bytes: utf8(
      svgText(
        sheet,
        `Flat pattern of end ${letterOf(end)} of ${numbered(end.tube)}, ${fitInWords(derived, end)}. Full size. ${WHO_DECIDES}`,
      ),
    ),
  }));
}

async function patternsOf(derived: Derived, going: Going, surface: Surface) {
  const ends = endsOf(derived);
  const unit = derived.job.lengthUnit;
  const patterns: { readonly end: EndOf; readonly sheet: Sheet }[] = [];
  const without: EndOf[] = [];
  for (const [done, end] of ends.entries()) {
    // One end after the other, so that the page can breathe between them.
    await going(done, ends.length);
    const wrap = paperWrap(end.tube, end.which, surface, unit);
    if (wrap === null) without.push(end);
    else patterns.push({ end, sheet: wrapPattern(derived, end, wrap, unit) });
  }
  await going(ends.length, ends.length);
  return { patterns, without };
}

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
