/**
 * What sets the cage up by tape before it is welded. How the first tube stands, three tapes for each end of every other
 * tube in build order, and the diagonals of the bays.
 */
import type { TubeRef } from '../../core/job/reference.ts';
import { jobRevision } from '../../core/solve/revision.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import type { Bay } from '../../core/tack/bays.ts';
import type { Tape } from '../../core/tack/tapes.ts';
import { tackUp, type TackEnd, type TackTube, type TackUp } from '../../core/tack/tack-up.ts';
import { formatLength } from '../../core/units/length.ts';
import {
  bayCornerInWords,
  bayInWords,
  baySideInWords,
  firstInWords,
  leanInWords,
  sideInWords,
  tackPlaceInWords,
  untapedInWords,
} from '../../core/words/tack.ts';
import { lengthFigure } from '../../drawing/figures.ts';
import { shrunk } from '../../drawing/fit.ts';
import { FAINT, FIRM, LENGTH, stroke, text } from '../../drawing/ink.ts';
import type { Sheet } from '../../drawing/types.ts';
import { halfWayFromTip } from '../../core/tack/places.ts';
import { numbered } from '../../core/words/ends.ts';
import { foot, NO_TUBE } from './cautions.ts';
import type { Context } from './context.ts';
import { fillPages, gap, paragraph, part, rule, stacked, type Block, type Part } from './page.ts';

const TITLE = 'Setting up by tape';
/** 11 points: what is read off to set a tube by. */
const SAID = 3.9;
const HEAD = { size: 4.6, bold: true, after: 1.5 } as const;

/** How it is read, once. */
const HOW = [
  'Before anything is welded: strike the middle of every foot on the car. Then tubes in this order; tack each one only once the tapes at both its ends agree. Three tapes to an end say where it is.',
  'The large figure is what a tape reads, straight, outside to outside: from the edge of the cut end, on or opposite its line (of a straight tube its scribed line, of a bent one its inside line), with what was left on trimmed off, to the place named. Beside it, c–c: from centreline to centreline, node to node, to check by the drawing.',
  '“4 A, on its line” is the edge of that cut end. Feet: the corner that lies on the car. Half-way: on the outside of the tube, half-way along it between its nodes. The tapes run clear of the tubes that stand by then; of the car itself nothing is known here.',
];

export function tackUpSheets(context: Context): Sheet[] {
  const { derived, letters, paper, width } = context;
  const up = tackUp(derived);
  const heading = paragraph(letters, `${TITLE}: ${derived.job.name}`, width, { ...HEAD, most: 1, after: 2.5 });
  const parts: readonly Part[] =
    derived.tubes.length === 0
      ? [part(heading, paragraph(letters, NO_TUBE, width, { size: SAID }))]
      : [
          part(heading, ...HOW.map((words) => paragraph(letters, words, width, { size: SAID, after: 1.4 })), gap(1)),
          ...firstPart(context, up),
          ...tubesPart(context, up),
          ...baysPart(context, up.bays),
        ];
  return fillPages(paper, TITLE, parts, heading, foot(context, TITLE, jobRevision(derived)));
}

/** How the tube that is set first stands. */
function firstPart({ derived, letters, unit, width }: Context, { first }: TackUp): Part[] {
  if (first === null) return [];
  const tube = derived.byId.get(first.tube)!;
  const { lean, feet } = first;
  const apart =
    feet === null
      ? ''
      : ` Its feet: ${lengthFigure(feet.tape, unit)} from the ${tackPlaceInWords(derived, feet.from)}, to the ${tackPlaceInWords(derived, feet.to)}; ${lengthFigure(feet.centres, unit)} from middle to middle.`;
  return [
    part(
      paragraph(letters, `First: ${numbered(tube)}`, width, { ...HEAD, most: 1 }),
      paragraph(letters, `${firstInWords(tube)} ${leanInWords(lean)}${apart}`, width, { size: 4.4, after: 2 }),
    ),
  ];
}

const LEFT = 30;
const ROW = 11.6;

/** A row an end: which edge, then its three tapes side by side. */
function tubesPart(context: Context, { tubes }: TackUp): Part[] {
  const { derived, letters, width } = context;
  const tops = new Set(
    tubes.flatMap(({ ends }) =>
      ends.flatMap((end) => (end?.tapes ?? []).flatMap(({ to }) => (to.kind === 'top' ? [to.tube] : []))),
    ),
  );
  return tubes.map((tack, i): Part => {
    const tube = derived.byId.get(tack.tube)!;
    const title = paragraph(letters, numbered(tube), width, { size: 4.4, bold: true, most: 1, after: 0.4 });
    const marked = tops.has(tube.id) ? [halfWay(context, tube)] : [];
    const before = new Set(tubes.slice(0, i).map(({ tube: id }) => id));
    const rows = rowsOf(context, tack, tube, before);
    // A tube stands whole on one page.
    return part(stacked(rule(context.width, FAINT), title, ...rows, ...marked), gap(1.6));
  });
}

function halfWay({ letters, unit, width }: Context, tube: SolvedTube): Block {
  const words = `Mark it half-way before it is set: ${formatLength(halfWayFromTip(tube), unit).text} ${unit} along its centreline from its finished tip A.`;
  return paragraph(letters, words, width, { size: SAID, after: 0.4 });
}

function rowsOf(context: Context, { ends }: TackTube, tube: SolvedTube, before: ReadonlySet<TubeRef>): Block[] {
  const { derived, letters, width } = context;
  return ([0, 1] as const).map((which) => {
    const end = ends[which];
    if (end !== null) return endRow(context, end);
    const words = untapedInWords(derived, tube, which, before, ends[1 - which] !== null);
    return paragraph(letters, `${'AB'[which]}: ${words}`, width, { size: SAID, after: 1 });
  });
}

function endRow({ derived, letters, unit, width }: Context, { end, from, tapes }: TackEnd): Block {
  const column = (width - LEFT) / 3;
  const side = shrunk(letters, sideInWords(from.side), LEFT - 2, SAID);
  const cell = ({ to, tape, centres }: Tape, left: number, top: number) => {
    const place = shrunk(letters, tackPlaceInWords(derived, to), column - 3, SAID);
    const figure = lengthFigure(tape, unit);
    const across = letters.width(figure, LENGTH, true) + 3;
    const between = shrunk(letters, `c–c ${formatLength(centres, unit).text}`, column - across - 1, SAID);
    return [
      text(left, top - 3.8, place.text, { size: place.size }),
      text(left, top - 9.3, figure, { size: LENGTH, bold: true }),
      text(left + across, top - 9.3, between.text, { size: between.size }),
    ];
  };
  return {
    height: ROW,
    draw: (left, top) => [
      text(left, top - 5, end, { size: 5.3, bold: true }),
      text(left, top - 9.3, side.text, { size: side.size }),
      ...tapes.flatMap((tape, i) => cell(tape, left + LEFT + i * column, top)),
    ],
  };
}

const BAYS = 'Bays: square each by its diagonals';
const BAYS_HOW =
  'At each corner mark the tube that runs through, on the side named, where the centreline of the tube that ends there comes to it; at a bend half-way round it. Lay the tape from mark to mark over the outside of the cage. What is symmetric has equal diagonals: shift until they are.';

function baysPart(context: Context, bays: readonly Bay[]): Part[] {
  const { letters, width } = context;
  const heading = paragraph(letters, BAYS, width, HEAD);
  if (bays.length === 0)
    return [
      part(
        stacked(
          gap(2),
          heading,
          paragraph(letters, 'No four tubes of this cage, nor three with a bend, close a bay.', width, { size: SAID }),
        ),
      ),
    ];
  const [first, ...rest] = bays.map((bay) => bayRow(context, bay));
  return [
    part(
      stacked(
        gap(2),
        {
          height: 1,
          draw: (left, top) => [
            stroke(
              [
                { x: left, y: top },
                { x: left + width, y: top },
              ],
              FIRM,
            ),
          ],
        },
        heading,
        paragraph(letters, BAYS_HOW, width, { size: SAID, after: 1.6 }),
        first!,
      ),
      ...rest,
    ),
  ];
}

function bayRow({ derived, letters, unit, width }: Context, bay: Bay): Block {
  const column = width / 2;
  const [a, b, c, d] = bay.corners.map((corner) => bayCornerInWords(derived, corner));
  const title = `${bayInWords(derived, bay)}: marks on the ${baySideInWords(bay)} side${bay.symmetric ? '; both diagonals alike' : ''}`;
  const diagonal = (from: string, to: string, i: 0 | 1, left: number, top: number) => {
    const place = shrunk(letters, `${from} to ${to}`, column - 3, SAID);
    const figure = lengthFigure(bay.tapes[i], unit);
    const between = `c–c ${formatLength(bay.centres[i], unit).text}`;
    return [
      text(left, top - 3.8, place.text, { size: place.size }),
      text(left, top - 9.3, figure, { size: LENGTH, bold: true }),
      text(left + letters.width(figure, LENGTH, true) + 3, top - 9.3, between, { size: SAID }),
    ];
  };
  return stacked(paragraph(letters, title, width, { size: SAID, bold: true, after: 0.2, most: 3 }), {
    height: ROW,
    draw: (left, top) => [...diagonal(a!, c!, 0, left, top), ...diagonal(b!, d!, 1, left + column, top)],
  });
}
