/**
 * feet.pdf: every piece of the feet at full size, to be cut to or pricked through, with what has to be known above it. Pages show whether they
 * were printed true; a piece larger than the page comes in sheets to be joined.
 */
import { massInWords } from '../../core/units/mass.ts';
import type { Derived } from '../../core/derive.ts';
import { blankMass, contactArea, coveredArea, footMass } from '../../core/feet/amount.ts';
import { formatLength, type LengthUnit } from '../../core/units/length.ts';
import { WHO_DECIDES } from '../../core/words/cautions.ts';
import { areaInWords, bendInWords, sizeInWords } from '../../core/words/feet.ts';
import { lengthFigure } from '../../drawing/figures.ts';
import { wrapped } from '../../drawing/fit.ts';
import type { Going } from '../../drawing/going.ts';
import { lettering, type Fonts, type Lettering } from '../../drawing/lettering.ts';
import { moved, quarterTurned } from '../../drawing/move.ts';
import { writePdf } from '../../drawing/pdf.ts';
import { shelved, type Size } from '../../drawing/shelves.ts';
import { words } from '../../drawing/strokes.ts';
import type { Mark, Picture } from '../../drawing/types.ts';
import type { ExportFile, PrintSettings } from '../shared/files.ts';
import { pagesOn, putIn, sizeOf, spaceOn } from '../shared/paper.ts';
import { JOIN, tiled } from '../shared/tiles.ts';
import { extentOf, lineMarks } from './pattern.ts';
import { NO_FEET } from './patterns.ts';
import { piecesOf, type Piece } from './pieces.ts';

const HOW =
  'Seen from the tube’s side; along runs to the right, across up. Holes are given by their middle from the left and from the lower edge of the drawing. A bend lies between its dashed lines; rings show where tubes stand.';

const SIZE = 3.3;
const LEADING = 4.2;
/** Between pieces, mm. */
const GAP = 9;
/** Round the drawing, for its own figures. */
const BESIDE = 6;
/** A narrower piece still has room for its words. */
const LEAST_WIDE = 80;

/** Nobody stands on a foot: one page that says so. */
export async function feetPdf(
  derived: Derived,
  fonts: Fonts,
  settings: PrintSettings,
  going: Going,
): Promise<ExportFile> {
  const face = lettering(fonts);
  const space = spaceOn(settings);
  const size = sizeOf(space);
  const { job } = derived;
  const blocks = piecesOf(derived).map((piece) => ({
    piece,
    ...laid(blockOf(face, piece, size.width, job.lengthUnit), size),
  }));
  const fits = ({ width, height }: Picture): boolean => width <= size.width && height <= size.height;
  const whole = blocks.filter(fits);
  const pages: { name: string; marks: Mark[] }[] = [];
  for (const [i, { sheet, left, down }] of shelved(whole, size, GAP).entries()) {
    const { piece, marks, height } = whole[i]!;
    const page = (pages[sheet] ??= { name: '', marks: [] });
    if (!page.name.split(', ').includes(piece.mark))
      page.name = page.name === '' ? piece.mark : `${page.name}, ${piece.mark}`;
    page.marks.push(...putIn(space, marks, height, left, down));
  }
  for (const block of blocks.filter((each) => !fits(each))) {
    for (const tile of tiled(block.marks, block, size, face)) {
      pages.push({
        name: `${block.piece.mark}, sheet ${tile.name}. ${JOIN}`,
        marks: moved(tile.marks, space.left, space.bottom),
      });
    }
  }
  if (pages.length === 0) pages.push({ name: 'none', marks: [words('page', space.left, space.top - 5, NO_FEET, 4)] });
  const page = pagesOn(settings, face, blocks.length === 0 ? '' : HOW, WHO_DECIDES);
  const groups = pages.map(({ name, marks }, i) => () => [
    page({ title: `Feet · ${name} · ${job.name}`, count: `page ${i + 1} of ${pages.length}` }, marks),
  ]);
  return { fileName: 'feet.pdf', bytes: await writePdf(`Feet, ${job.name}`, face, groups, going) };
}

/** Upright where it fits so, else along the page where it fits so. */
const laid = (picture: Picture, { width, height }: Size): Picture =>
  picture.width > width && picture.width <= height && picture.height <= width
    ? { width: picture.height, height: picture.width, marks: quarterTurned(picture.marks, picture.height) }
    : picture;

/** The piece with its words above it, from its lower left corner. */
function blockOf(face: Lettering, piece: Piece, most: number, unit: LengthUnit): Picture {
  const { width, height } = extentOf(piece.blank);
  const wide = Math.min(Math.max(width + 2 * BESIDE, LEAST_WIDE), Math.max(most, width + 2 * BESIDE));
  const across = Math.min(wide, most);
  const title = wrapped(face, piece.title, across, 4.6, true, 2);
  const lines = factsOf(piece, unit).flatMap((text) => wrapped(face, text, across, SIZE, false, 8));
  const above = 5.6 * title.length + LEADING * lines.length + 4;
  const top = height + 2 * BESIDE + above;
  const drawing = [
    ...lineMarks(piece),
    ...piece.blank.holes.map(({ at, diameter }, i) =>
      words(
        'TEXT',
        at[0] - piece.blank.along[0] + diameter / 2 + 1,
        at[1] - piece.blank.across[0] - 1,
        `${i + 1}`,
        SIZE,
      ),
    ),
    words('TEXT', width / 2, -4, lengthFigure(width, unit), SIZE, { anchor: 'middle' }),
    words('TEXT', -1.5, height / 2, lengthFigure(height, unit), SIZE, { anchor: 'middle', turn: Math.PI / 2 }),
  ];
  return {
    width: wide,
    height: top,
    marks: [
      ...moved(drawing, BESIDE, BESIDE),
      ...title.map((text, i) => words('TEXT', 0, top - 4.6 - 5.6 * i, text, 4.6, { bold: true })),
      ...lines.map((text, i) => words('TEXT', 0, top - 5.6 * title.length - LEADING * (i + 0.9), text, SIZE)),
    ],
  };
}

/** What stands above a piece: how many, what it measures and weighs, its holes and its bend; of the foot's first piece what it comes to. */
function factsOf({ blank, foot, count, under, outlines }: Piece, unit: LengthUnit): string[] {
  const { width, height } = extentOf(blank);
  const shown = (mm: number): string => formatLength(mm, unit).text;
  const [left, lower] = [blank.along[0], blank.across[0]];
  const isWall = blank.part === 'long-wall' || blank.part === 'short-wall';
  const holes = blank.holes.map(
    ({ at, diameter }, i) => `${i + 1} at ${shown(at[0] - left)}, ${shown(at[1] - lower)}, Ø ${shown(diameter)}`,
  );
  const stands = outlines.map(
    ({ outline: { centre }, under: ends }) => `${ends} at ${shown(centre[0] - left)}, ${shown(centre[1] - lower)}`,
  );
  const bend = bendInWords(foot, unit);
  const along =
    blank.bend === null
      ? ''
      : ` Its middle line ${lengthFigure(blank.bend.lines[1] - (blank.bend.axis === 0 ? left : lower), unit)} from the ${blank.bend.axis === 0 ? 'left' : 'lower'} edge.`;
  return [
    `${count} Under ${under}.`,
    `${sizeInWords([width, height], unit)}, ${massInWords(blankMass(blank), unit)} each.`,
    ...(isWall ? [] : [footInWords(foot, unit)]),
    ...(holes.length === 0 ? [] : [`Holes: ${holes.join('; ')}.`]),
    ...(bend === null ? [] : [`${bend}${along}`]),
    ...(stands.length === 0 ? [] : [`Middle of the tube: ${stands.join('; ')}.`]),
  ];
}

function footInWords(foot: Piece['foot'], unit: LengthUnit): string {
  const touches = `The foot touches the car with ${areaInWords(contactArea(foot), unit)}`;
  const covers =
    foot.kind === 'box' ? ` (the foot of its walls) and covers ${areaInWords(coveredArea(foot), unit)}` : '';
  return `${touches}${covers}; ${massInWords(footMass(foot), unit)} in all.`;
}
