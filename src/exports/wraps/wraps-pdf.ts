/** Wrap templates on paper: wraps.pdf, at full size, on pages that show whether they were printed so. */
import type { Going } from '../../drawing/going.ts';
import { WHO_DECIDES } from '../../core/words/cautions.ts';
import type { Derived } from '../../core/derive.ts';
import { needsWrap, paperWrap, type Surface } from '../../core/cope/wrap.ts';
import type { Box2 } from '../../drawing/clip.ts';
import { lettering, type Fonts, type Lettering } from '../../drawing/lettering.ts';
import { moved, quarterTurned } from '../../drawing/move.ts';
import { writePdf } from '../../drawing/pdf.ts';
import { packed } from '../../drawing/shelves.ts';
import type { ExportFile, PrintSettings } from '../shared/files.ts';
import { pagesOn, putIn, spaceOn, sizeOf } from '../shared/paper.ts';
import { JOIN, tiled } from '../shared/tiles.ts';
import { landingPages, landingsOf, type Landed, type Page } from './landings.ts';
import { wrapTemplate, type Template } from './wrap-template.ts';
import { endMark, endsOf, surfaceInWords, type EndOf } from '../shared/wrap-words.ts';

/** Between templates with their words, mm: room for the scissors. */
const GAP = 4;

const CAUTION = `Hold it against the tube before you cut. ${WHO_DECIDES}`;

const HOW =
  'Cut out a template, wind it round the tube printed side out, lower edge at the sawn end, 0° on the inside line or the scribed line, as it says: the seam must just close. The hatched part comes off the tube. Degrees run clockwise as you look into the end, turns on a run tube as you look along it from its end A.';

/**
 * wraps.pdf: one template an end, as many as a page holds, its ends named at its head; a wide one lies along the page, one that is larger than the page comes in
 * sheets to be joined. Then where tips and throats land on the run tubes, a table. Ends that a plain square cut makes have no template, and are named on
 * the last page with those that nothing reaches.
 */
export async function wrapsPdf(
  derived: Derived,
  fonts: Fonts,
  settings: PrintSettings,
  going: Going,
  surface: Surface = 'outer',
): Promise<ExportFile> {
  const face = lettering(fonts);
  const space = spaceOn(settings);
  const { job } = derived;
  const ends = endsOf(derived);
  const needed = ends.filter(({ tube, which }) => needsWrap(tube.ends[which]));
  const blocks: Block[] = [];
  const without: EndOf[] = [];
  const landed: Landed[] = [];
  const total = ends.length + 1;
  for (const [done, end] of needed.entries()) {
    // One end after the other, so that the page can breathe between them.
    await going(done, total);
    const wrap = paperWrap(end.tube, end.which, surface, job.lengthUnit);
    if (wrap === null) without.push(end);
    else {
      landed.push(...landingsOf(derived, end, wrap));
      blocks.push(
        fittedTo(space, wrapTemplate(derived, face, end, wrap, job.lengthUnit, sizeOf(space).width, GAP), endMark(end)),
      );
    }
  }
  const templates = pagesOf(face, blocks, space);
  const notes = [
    ...indexOf(blocks, templates),
    ...notesOf(
      ends.length > 0,
      ends.filter((end) => !needed.includes(end)),
      without,
    ),
  ];
  const pages = [...templates, ...landingPages(face, landed, notes, space, job.lengthUnit)];
  const page = pagesOn(settings, face, `${HOW} ${surfaceInWords(surface)}`, CAUTION);
  const groups = pages.map(({ name, marks }, i) => () => {
    const title = `Wrap templates · ${name} · ${job.name}`;
    return [page({ title, count: `page ${i + 1} of ${pages.length}` }, marks)];
  });
  const bytes = await writePdf(`Wrap templates, ${job.name}`, face, groups, (done, of) =>
    going(needed.length + ((total - needed.length) * done) / of, total),
  );
  return { fileName: 'wraps.pdf', bytes };
}

interface Block extends Template {
  readonly name: string;
}

/** Upright where it fits so, else along the page where it fits so, else upright in several sheets. */
function fittedTo(space: Box2, template: Template, name: string): Block {
  const size = sizeOf(space);
  const { width, height, marks } = template;
  const lies = width > size.width && width <= size.height && height <= size.width;
  return lies ? { name, width: height, height: width, marks: quarterTurned(marks, height) } : { ...template, name };
}

function pagesOf(face: Lettering, blocks: readonly Block[], space: Box2): Page[] {
  const size = sizeOf(space);
  const pages: Page[] = [];
  const fits = ({ width, height }: Block) => width <= size.width && height <= size.height;
  const whole = blocks.filter(fits);
  for (const [i, { sheet, left, down }] of packed(whole, size, GAP).entries()) {
    const block = whole[i]!;
    const { name, marks } = pages[sheet] ?? { name: '', marks: [] };
    pages[sheet] = {
      name: name === '' ? block.name : `${name}, ${block.name}`,
      marks: [...marks, ...putIn(space, block.marks, block.height, left, down)],
    };
  }
  for (const block of blocks.filter((each) => !fits(each))) {
    for (const tile of tiled(block.marks, block, size, face)) {
      pages.push({
        name: `${block.name}, sheet ${tile.name}. ${JOIN}`,
        marks: moved(tile.marks, space.left, space.bottom),
      });
    }
  }
  return pages;
}

/** On which page each template is, tube by tube, for they lie as the paper has room; nothing where they all are on one. */
function indexOf(blocks: readonly Block[], pages: readonly Page[]): string[] {
  if (pages.length < 2) return [];
  const placed = blocks.flatMap(({ name }) => {
    const page = pages.findIndex(({ name: on }) => on.split(', ').includes(name));
    return page < 0 ? [] : [`${name}: ${page + 1}`];
  });
  return [`On which page each template is: ${placed.join(', ')}.`];
}

/** Empty where every end has a template; a job without an end says so. */
function notesOf(any: boolean, square: readonly EndOf[], without: readonly EndOf[]): string[] {
  if (!any) return ['This job has no tubes, so no ends to cut.'];
  const list = (ends: readonly EndOf[]): string => ends.map(endMark).join(', ');
  return [
    ...(square.length > 0 ? [`Cut square, no template needed: ${list(square)}.`] : []),
    ...(without.length > 0 ? [`Nothing reaches these ends, there is no line to draw: ${list(without)}.`] : []),
  ];
}
