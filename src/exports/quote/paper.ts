/** What the papers of order and quote are put together with. */
import { shownName } from '../../core/job/shown.ts';
import { jobRevision } from '../../core/solve/revision.ts';
import type { Derived } from '../../core/derive.ts';
import type { Going } from '../../drawing/going.ts';
import { lettering, type Fonts } from '../../drawing/lettering.ts';
import { writePdf } from '../../drawing/pdf.ts';
import type { ExportFile, PrintSettings } from '../shared/files.ts';
import { foot, FOOT_HEIGHT } from '../sheets/cautions.ts';
import { contextOf, type Context } from '../sheets/context.ts';
import { BOTTOM, fillPages, gap, MARGIN, paragraph, part, stacked, type Block, type Part } from '../sheets/page.ts';

export interface PaperAsked {
  readonly fileName: string;
  readonly title: string;
  /** Over it, in a person's own words: who it is from. */
  readonly from?: string | undefined;
  /** The day stands among its parts. */
  readonly hasOwnDay?: true;
  readonly parts: (context: Context) => readonly Part[];
}

/** Its pages, numbered. `going` is awaited before and after; if it rejects, so does this. */
export async function paperPdf(
  derived: Derived,
  fonts: Fonts,
  settings: PrintSettings,
  going: Going,
  asked: PaperAsked,
): Promise<ExportFile> {
  const { fileName, title, parts } = asked;
  const letters = lettering(fonts);
  const context = contextOf(derived, letters, settings);
  const { width, paper } = context;
  const again = paragraph(letters, `${title}: ${derived.job.name}`, width, { size: 4, bold: true, most: 1, after: 3 });
  const sheets = fillPages(paper, title, [headed(context, asked), ...parts(context)], again, gap(FOOT_HEIGHT));
  const code = jobRevision(derived);
  const pages = sheets.map(({ marks, ...sheet }, i) => () => {
    const which = foot(context, `${title}, page ${i + 1} of ${sheets.length}`, code);
    return [{ ...sheet, marks: [...marks, ...which.draw(MARGIN, BOTTOM + FOOT_HEIGHT)] }];
  });
  return { fileName, bytes: await writePdf(`${title}, ${derived.job.name}`, letters, pages, going) };
}

/** Who it is from where that is said, title, job and day. */
function headed(context: Context, { title, from, hasOwnDay }: PaperAsked): Part {
  const { derived, letters, width, day } = context;
  const { name } = derived.job;
  const over = ownWords(context, from, 5);
  return part(
    stacked(
      ...over,
      ...(over.length === 0 ? [] : [gap(4)]),
      paragraph(letters, title, width, { size: 5.4, bold: true, most: 1, after: 1 }),
      paragraph(letters, day === undefined || hasOwnDay ? name : `${name}, ${day}`, width, {
        size: 4,
        most: 2,
        after: 1.4,
      }),
    ),
  );
}

/** A person's own words, each line of them by itself. */
export const ownWords = ({ letters, width }: Context, text: string | undefined, size?: number): readonly Block[] =>
  (text ?? '')
    .split('\n')
    .filter((line) => line.trim() !== '')
    .map((line) => paragraph(letters, shownName(line), width, { after: 0.8, ...(size !== undefined && { size }) }));
