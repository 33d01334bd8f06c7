/**
 * The flat pieces of all feet for a machine that cuts sheet: feet.dxf, and feet/*.svg, one a piece. At full size. Files are named by the foot's
 * place in the job and by the piece, never by what somebody typed.
 */
import type { Derived } from '../../core/derive.ts';
import { WHO_DECIDES } from '../../core/words/cautions.ts';
import { bendInWords } from '../../core/words/feet.ts';
import { dxfText } from '../../drawing/dxf.ts';
import type { Going } from '../../drawing/going.ts';
import { moved } from '../../drawing/move.ts';
import { shelved } from '../../drawing/shelves.ts';
import { words } from '../../drawing/strokes.ts';
import { svgText } from '../../drawing/svg.ts';
import type { ExportFile } from '../shared/files.ts';
import { SHEET_LAYERS } from '../shared/sheet-layers.ts';
import { footPattern } from './pattern.ts';
import { piecesOf } from './pieces.ts';

/** mm: a sheet of the usual width, as long as it must be. */
const SHEET_WIDTH = 1000;
const GAP = 15;

/** What a job says that has no foot with a tube on it. */
export const NO_FEET = 'No end of this job stands on a foot.';

/** One drawing of every piece, once: how many are to be cut stands on it. */
export async function feetDxf(derived: Derived, going: Going): Promise<ExportFile> {
  await going(0, 1);
  const sheets = piecesOf(derived).map(footPattern);
  const places = shelved(sheets, { width: SHEET_WIDTH, height: Infinity }, GAP);
  const notes = [...(sheets.length === 0 ? [NO_FEET] : []), WHO_DECIDES];
  const foot = 4 + 6 * notes.length;
  const height = foot + Math.max(0, ...sheets.map((sheet, i) => places[i]!.down + sheet.height));
  const marks = sheets.flatMap((sheet, i) =>
    moved(sheet.marks, places[i]!.left, height - places[i]!.down - sheet.height),
  );
  const written = notes.map((note, i) => words('TEXT', 0, 2 + 6 * (notes.length - 1 - i), note, 4));
  const text = dxfText({ width: SHEET_WIDTH, height, marks: [...marks, ...written] }, SHEET_LAYERS);
  return { fileName: 'feet.dxf', bytes: new TextEncoder().encode(text) };
}

/** feet/2-long-wall.svg: the piece of the job's second foot. */
export async function feetSvg(derived: Derived, going: Going): Promise<readonly ExportFile[]> {
  await going(0, 1);
  return piecesOf(derived).map((piece) => {
    const about = [
      `Flat pattern of ${piece.title}, seen from the tube's side, full size.`,
      piece.count,
      bendInWords(piece.foot, derived.job.lengthUnit),
      WHO_DECIDES,
    ];
    return {
      fileName: `feet/${piece.mark.slice(1)}-${piece.blank.part}.svg`,
      bytes: new TextEncoder().encode(svgText(footPattern(piece), about.filter((each) => each !== null).join(' '))),
    };
  });
}
