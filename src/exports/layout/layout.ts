/**
 * Full-size layouts of the tubes that are bent and lie flat: layout.dxf, and layout.pdf in sheets to be joined on the floor.
 */
import type { Going } from '../../drawing/going.ts';
import { WHO_DECIDES } from '../../core/words/cautions.ts';
import type { Derived } from '../../core/derive.ts';
import { FIRST_MARKING } from '../../core/job/kinds/marking.ts';
import { layFlat, type FlatTube } from '../../core/run/lay-flat.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { dxfText } from '../../drawing/dxf.ts';
import { moved } from '../../drawing/move.ts';
import { shelved } from '../../drawing/shelves.ts';
import { words } from '../../drawing/strokes.ts';
import type { Sheet } from '../../drawing/types.ts';
import type { ExportFile } from '../shared/files.ts';
import { layoutDrawing, LAYOUT_LAYERS } from './layout-drawing.ts';
import { isWhole } from '../shared/whole.ts';
import { numbered } from '../../core/words/ends.ts';

export interface LaidOut {
  readonly tube: SolvedTube;
  readonly flat: FlatTube;
  readonly drawing: Sheet;
}

export interface Layouts {
  readonly laid: readonly LaidOut[];
  /** Why other bent tubes have none; empty where all have one. */
  readonly without: readonly string[];
}

/** A tube out of one plane has no one drawing on a floor. */
const NOT_FLAT =
  'Strike no floor drawing of it: bend it by the marks and rotations of its sheet, lay it on the plane of its first bend, as the sheet says, and check it there by its check dimensions and by what stands off that plane.';

/** `dimensioned`: with its dimensions, which on paper have a page of their own. */
export async function layoutsOf(
  { tubes, findings, job }: Derived,
  going: Going,
  dimensioned: boolean,
): Promise<Layouts> {
  const { fine } = job.marking ?? FIRST_MARKING;
  const laid: LaidOut[] = [];
  const [notFlat, notWhole]: [SolvedTube[], SolvedTube[]] = [[], []];
  for (const [done, tube] of tubes.entries()) {
    // One tube after the other, so that the page can breathe between them.
    await going(done, tubes.length);
    const flat = layFlat(tube);
    if (tube.bends.length === 0) continue;
    if (!isWhole(tube)) notWhole.push(tube);
    else if (flat === null) notFlat.push(tube);
    else {
      const drawing = layoutDrawing(tube, flat, findings, job.lengthUnit, fine, dimensioned);
      laid.push({ tube, flat, drawing });
    }
  }
  await going(tubes.length, tubes.length);
  const list = (of: readonly SolvedTube[]) => of.map(numbered).join(', ');
  return {
    laid,
    without: [
      ...(laid.length === 0 ? ['No bent tube of this job lies flat.'] : []),
      ...(notFlat.length > 0 ? [`Bent, but does not lie flat: ${list(notFlat)}. ${NOT_FLAT}`] : []),
      ...(notWhole.length > 0 ? [`Cannot be made like this: ${list(notWhole)}.`] : []),
    ],
  };
}

/** mm: wider than any tube, so that each stands in a row of its own or beside a small one. */
const SHEET_WIDTH = 4000;

/** layout.dxf: one drawing, each tube in its place, none over another. */
export async function layoutDxf(derived: Derived, going: Going): Promise<ExportFile> {
  const { laid, without } = await layoutsOf(derived, going, true);
  const drawings = laid.map(({ drawing }) => drawing);
  const places = shelved(drawings, { width: SHEET_WIDTH, height: Infinity }, 100);
  const foot = 30;
  const notes = [...without, WHO_DECIDES];
  const height = foot + 15 * notes.length + Math.max(0, ...drawings.map((each, i) => places[i]!.down + each.height));
  const marks = drawings.flatMap((each, i) =>
    moved(each.marks, places[i]!.left, height - places[i]!.down - each.height),
  );
  const written = notes.map((text, i) => words('TEXT', 0, foot + 15 * (notes.length - 1 - i), text, 10));
  const text = dxfText({ width: SHEET_WIDTH, height, marks: [...marks, ...written] }, LAYOUT_LAYERS);
  return { fileName: 'layout.dxf', bytes: new TextEncoder().encode(text) };
}
