/**
 * dossier.pdf: what an inspector asks for, in one paper: cover with the key drawing, tubes with their heats, bends as they were made, joints to tick, places for
 * a hole, feet, gussets, what was found and what was not looked at, photos, and lines to sign. Pages are numbered, so all are laid out before the first is written.
 */
import type { Derived } from '../../core/derive.ts';
import { jobRevision } from '../../core/solve/revision.ts';
import { DOSSIER, DOSSIER_IS } from '../../core/words/dossier.ts';
import type { Going } from '../../drawing/going.ts';
import { lettering, type Fonts } from '../../drawing/lettering.ts';
import { writePdf, type PictureSheet } from '../../drawing/pdf.ts';
import type { ExportFile, PrintSettings } from '../shared/files.ts';
import { foot, FOOT_HEIGHT } from '../sheets/cautions.ts';
import { contextOf, type Context } from '../sheets/context.ts';
import { keyDrawing, title } from '../sheets/cover.ts';
import { BOTTOM, fillPages, gap, MARGIN, paragraph, part, stacked, type Block, type Part } from '../sheets/page.ts';
import { bentPart } from './bent.ts';
import { foundParts } from './found.ts';
import { holesPart, jointsPart } from './joints.ts';
import { pictures, type Photos } from './photos.ts';
import { feetPart, gussetsPart } from './plates.ts';
import { rulesPart } from './rules.ts';
import { statementPart } from './statement.ts';
import { tubesPart } from './tubes.ts';

/** Its place is kept on every page while these are filled. */
const LATER: Block = gap(FOOT_HEIGHT);

/** `photos` are the job's, as far as they are there. `going` is awaited before each part and before each page; if it rejects, so does this. */
export async function dossierPdf(
  derived: Derived,
  fonts: Fonts,
  settings: PrintSettings,
  going: Going,
  photos: Photos,
): Promise<ExportFile> {
  const letters = lettering(fonts);
  const context = contextOf(derived, letters, settings);
  const makers: readonly ((context: Context) => readonly Part[])[] = [
    tubesPart,
    bentPart,
    jointsPart,
    holesPart,
    feetPart,
    gussetsPart,
    rulesPart,
    foundParts,
  ];
  const steps = makers.length + 2;
  await going(0, steps);
  const cover = coverSheets(context);
  const parts: Part[] = [];
  for (const [i, make] of makers.entries()) {
    await going(i + 1, steps);
    parts.push(...make(context));
  }
  const taken = pictures(context, photos);
  const sheets: readonly PictureSheet[] = [
    ...cover,
    ...filled(context, [
      ...parts,
      ...(taken.missing === null ? [] : [taken.missing]),
      ...(taken.sheets.length === 0 ? [statementPart(context)] : []),
    ]),
    ...taken.sheets,
    ...(taken.sheets.length === 0 ? [] : filled(context, [statementPart(context)])),
  ];
  const code = jobRevision(derived);
  const pages = sheets.map(({ marks, ...sheet }, i) => () => {
    const which = foot(context, `${DOSSIER}, page ${i + 1} of ${sheets.length}`, code);
    return [{ ...sheet, marks: [...marks, ...which.draw(MARGIN, BOTTOM + FOOT_HEIGHT)] }];
  });
  await going(steps - 1, steps);
  const bytes = await writePdf(`${DOSSIER}, ${derived.job.name}`, letters, pages, () => going(steps - 1, steps));
  return { fileName: 'dossier.pdf', bytes, ...(taken.note !== null && { note: `dossier.pdf: ${taken.note}` }) };
}

function coverSheets(context: Context) {
  const { letters, width, day } = context;
  const head = stacked(
    paragraph(letters, DOSSIER, width, { size: 5.4, bold: true, most: 1, after: 1 }),
    title(context),
    ...(day === undefined ? [] : [paragraph(letters, `Printed ${day}`, width, { size: 4, after: 0.8 })]),
    paragraph(letters, DOSSIER_IS, width, { after: 1 }),
  );
  return filled(context, [part(head), ...keyDrawing(context, head.height).map((block) => part(block))]);
}

function filled(context: Context, parts: readonly Part[]) {
  const { letters, width, derived } = context;
  const again = paragraph(letters, `${DOSSIER}: ${derived.job.name}`, width, {
    size: 4,
    bold: true,
    most: 1,
    after: 3,
  });
  return fillPages(context.paper, DOSSIER, parts, again, LATER);
}
