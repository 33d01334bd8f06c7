/**
 * layout.pdf: of every flat tube the page by which it is struck on the floor with a chalk line; then the tube at full size in sheets that are
 * joined by their crosses, before them a map of the sheets. Sheets on which nothing of the tube lies are left out.
 */
import type { Going } from '../../drawing/going.ts';
import { WHO_DECIDES } from '../../core/words/cautions.ts';
import type { Derived } from '../../core/derive.ts';
import type { Box2 } from '../../drawing/clip.ts';
import { wrapped } from '../../drawing/fit.ts';
import { lettering, type Fonts } from '../../drawing/lettering.ts';
import { writePdf } from '../../drawing/pdf.ts';
import { words } from '../../drawing/strokes.ts';
import type { Mark, Sheet } from '../../drawing/types.ts';
import type { ExportFile, PrintSettings } from '../shared/files.ts';
import { layoutsOf } from './layout.ts';
import { strikePages } from './strike-page.ts';
import { pagesOn, spaceOn, sizeOf } from '../shared/paper.ts';
import { JOINED, tilePages } from './layout-pages.ts';

const HOW = `${JOINED} Check the joined drawing with a tape against the figures of the page to strike it by before you bend.`;

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
    ...tilePages(face, drawing, space),
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

const notesMarks = (notes: readonly string[], space: Box2): Mark[] =>
  notes.map((text, i) => words('page', space.left, space.top - 5 - 5.5 * i, text, 4));
