/** Pieces of sheet metal laid out beside one another as one drawing, for a machine that cuts sheet; notes stand under them. */
import { dxfText } from '../../drawing/dxf.ts';
import { moved } from '../../drawing/move.ts';
import { shelved } from '../../drawing/shelves.ts';
import { words } from '../../drawing/strokes.ts';
import type { Sheet } from '../../drawing/types.ts';
import type { ExportFile } from './files.ts';
import { SHEET_LAYERS } from './sheet-layers.ts';

/** mm: a sheet of the usual width, as long as it must be; and between the pieces. */
const SHEET_WIDTH = 1000;
const GAP = 15;
/** mm: of the letters of a note, and from one to the next. */
const LETTERS = 4;
const NEXT = 6;

/** Every piece once: how many are to be cut stands on it. */
export function laidOut(fileName: string, sheets: readonly Sheet[], notes: readonly string[]): ExportFile {
  const places = shelved(sheets, { width: SHEET_WIDTH, height: Infinity }, GAP);
  const foot = 4 + NEXT * notes.length;
  const height = foot + Math.max(0, ...sheets.map((sheet, i) => places[i]!.down + sheet.height));
  const marks = sheets.flatMap((sheet, i) =>
    moved(sheet.marks, places[i]!.left, height - places[i]!.down - sheet.height),
  );
  const written = notes.map((note, i) => words('TEXT', 0, 2 + NEXT * (notes.length - 1 - i), note, LETTERS));
  const text = dxfText({ width: SHEET_WIDTH, height, marks: [...marks, ...written] }, SHEET_LAYERS);
  return { fileName, bytes: new TextEncoder().encode(text) };
}
