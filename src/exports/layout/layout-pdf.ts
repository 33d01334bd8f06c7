/**
 * layout.pdf: of every flat tube the page by which it is struck on the floor with a chalk line; then the tube at full size in sheets that are
 * joined by their crosses, before them a map of the sheets. Sheets on which nothing of the tube lies are left out.
 */
import type { Going } from '../../drawing/going.ts';
import { WHO_DECIDES } from '../../core/words/cautions.ts';
import type { Derived } from '../../core/derive.ts';
import type { Box2 } from '../../drawing/clip.ts';
import { wrapped } from '../../drawing/fit.ts';
import { lettering, type Fonts, type Lettering } from '../../drawing/lettering.ts';
import { moved, stretched } from '../../drawing/move.ts';
import { writePdf } from '../../drawing/pdf.ts';
import { FAINT, rectangle, shape, words } from '../../drawing/strokes.ts';
import type { Mark, Sheet } from '../../drawing/types.ts';
import type { ExportFile, PrintSettings } from '../shared/files.ts';
import { layoutsOf } from './layout.ts';
import { strikePages } from './strike-page.ts';
import { pagesOn, spaceOn, sizeOf } from '../shared/paper.ts';
import { JOIN, tiled, type Tile } from '../shared/tiles.ts';

const HOW = `${JOIN}: neighbours share the dashed line and the crosses with the same name. Check the joined drawing with a tape against the figures of the page to strike it by before you bend.`;

export async function layoutPdf(
  derived: Derived,
  fonts: Fonts,
  settings: PrintSettings,
  going: Going,
): Promise<ExportFile> {
  const face = lettering(fonts);
  const space = spaceOn(settings);
  const total = 2 * derived.tubes.length;
  const { laid, without } = await layoutsOf(derived, (done) => going(done, total), false);
  const { job } = derived;
  const pages = laid.flatMap(({ tube, flat, drawing }) => [
    ...strikePages(derived, tube, flat, face, space).map((marks) => ({
      name: `${drawing.name}, to strike on the floor`,
      marks: () => marks,
    })),
    ...pagesOf(face, drawing, space),
  ]);
  const notes = without.flatMap((text) => wrapped(face, text, sizeOf(space).width, 4));
  if (notes.length > 0) pages.push({ name: 'without a drawing', marks: () => notesMarks(notes, space) });
  const page = pagesOn(settings, face, laid.length === 0 ? '' : HOW, WHO_DECIDES);
  const groups = pages.map(({ name, marks }, i) => (): Sheet[] => {
    const title = `Full-size layout · ${name} · ${job.name}`;
    return [page({ title, count: `page ${i + 1} of ${pages.length}` }, marks())];
  });
  const bytes = await writePdf(`Full-size layout, ${job.name}`, face, groups, (done, of) =>
    going((total / 2) * (1 + done / of), total),
  );
  return { fileName: 'layout.pdf', bytes };
}

interface Page {
  readonly name: string;
  readonly marks: () => readonly Mark[];
}

function pagesOf(face: Lettering, drawing: Sheet, space: Box2): Page[] {
  const tiles = tiled(drawing.marks, drawing, sizeOf(space), face);
  return [
    { name: `${drawing.name}, map of ${tiles.length} sheets`, marks: () => mapOf(drawing, tiles, space) },
    ...tiles.map((tile) => ({
      name: `${drawing.name}, sheet ${tile.name}`,
      marks: () => moved(tile.marks, space.left, space.bottom),
    })),
  ];
}

/** The drawing made small, with the sheets and their names. Not to scale with anything: it only shows which lies where. */
function mapOf(drawing: Sheet, tiles: readonly Tile[], space: Box2): Mark[] {
  const size = sizeOf(space);
  const left = Math.min(...tiles.map(({ box }) => box.left));
  const right = Math.max(...tiles.map(({ box }) => box.right));
  const bottom = Math.min(...tiles.map(({ box }) => box.bottom));
  const top = Math.max(...tiles.map(({ box }) => box.top));
  const small = Math.min(size.width / (right - left), size.height / (top - bottom));
  const lines = drawing.marks.filter((mark) => mark.kind !== 'words');
  const frames = tiles.flatMap(({ name, box }): Mark[] => [
    shape('map', rectangle(box.left, box.bottom, box.right - box.left, box.top - box.bottom), FAINT),
    words('map', (box.left + box.right) / 2, (box.bottom + box.top) / 2, name, 5 / small, {
      anchor: 'middle',
      grey: 0.4,
    }),
  ]);
  const [dx, dy] = [space.left - left * small, space.top - top * small];
  return stretched([...lines, ...frames], small, small, dx, dy);
}

const notesMarks = (notes: readonly string[], space: Box2): Mark[] =>
  notes.map((text, i) => words('page', space.left, space.top - 5 - 5.5 * i, text, 4));
