/**
 * A sheet to take to the car: the places that are measured, on a sketch from three sides, and an empty box for every figure, wide enough for a
 * pencil; the widths and the tapes across that show a slip before the car is put away.
 */
import type { LayoutName } from '../../core/survey/spots.ts';
import {
  diagonalsOf,
  layoutMeant,
  toMeasure,
  widthOf,
  type Crossed,
  type Place,
  type Side,
  type ToMeasure,
} from '../../core/survey/to-measure.ts';
import {
  LEVEL_FIRST,
  MIDDLE_SIGN,
  placeMark,
  READ_LEVEL,
  placeName,
  SET_UP,
  TAPES_ACROSS,
} from '../../core/words/measuring.ts';
import { uncapital } from '../../core/words/lists.ts';
import { LAYOUT_WORDS } from '../../core/words/starters.ts';
import { numberedPlaces } from '../../drawing/car/picture.ts';
import type { View } from '../../drawing/car/outline.ts';
import { shrunk, wrapped } from '../../drawing/fit.ts';
import { box, FAINT, FINE, PLAIN, SMALL, stroke, text } from '../../drawing/ink.ts';
import type { Mark, Sheet } from '../../drawing/types.ts';
import { foot } from './cautions.ts';
import type { Context } from './context.ts';
import { abreast, drawn, fillPages, gap, paragraph, part, stacked, type Block, type Part } from './page.ts';

const TITLE = 'Measuring sheet';
const HEAD = { size: 4.6, bold: true, most: 1, after: 2 } as const;

const HOW = [
  LEVEL_FIRST,
  ...SET_UP.map((words, i) => `${i + 1}. ${words}`),
  'Along is read from the cross line, height up from zero: behind it and below it write a minus. Offset is read off the centreline, to the side that stands over its boxes, without a minus.',
  `${READ_LEVEL} Of a place in the middle of the car: ${uncapital(MIDDLE_SIGN)}`,
].join(' ');
const ACROSS =
  'From the left of one place to the right of the other, and the other way: alike on a car that is true. With the widths they show a slip of the tape while the car still stands there.';
const NOTHING = 'This job has no measured points.';

/** `layout` absent: what is meant by the job, as layoutMeant says. */
export function measuringSheets(context: Context, layout?: LayoutName): Sheet[] {
  const { derived, letters, paper, width } = context;
  const meant = layout ?? layoutMeant(derived.job);
  const all = toMeasure(derived.job, meant);
  const heading = paragraph(letters, `${TITLE}: ${derived.job.name}`, width, HEAD);
  const of = meant === null ? 'the job’s own points' : LAYOUT_WORDS[meant].name;
  const parts: readonly Part[] =
    all.places.length === 0
      ? [part(heading, paragraph(letters, NOTHING, width, { size: PLAIN }))]
      : [
          part(
            stacked(
              heading,
              filledIn(context, [`For: ${of}`, 'Date', 'Car']),
              filledIn(context, ['Measured by', 'Tape, level', 'Zero is at']),
              gap(1),
              paragraph(letters, HOW, width, { size: 3.9, after: 2 }),
            ),
          ),
          ...inGroups(all.places).flatMap((places, i, { length }) => [
            part(stacked(gap(i === 0 ? 0 : 3), pictures(context, { ...all, places }))),
            placesPart(context, places, i === length - 1 ? SPARE : 0),
          ]),
          ...acrossPart(context, all.crossed),
        ];
  return fillPages(paper, TITLE, parts, heading, foot(context, TITLE, null));
}

/** Lines to write on, each after its name. */
function filledIn({ letters, width }: Context, names: readonly string[]): Block {
  const column = width / names.length;
  return {
    height: 10,
    draw: (left, top) =>
      names.flatMap((name, i) => {
        const from = left + i * column;
        if (name.includes(':')) {
          const said = shrunk(letters, name, column - 4, PLAIN, true);
          return [text(from, top - 6.5, said.text, { size: said.size, bold: true })];
        }
        const after = from + letters.width(name, PLAIN, false) + 2;
        return [
          text(from, top - 6.5, name, { size: PLAIN }),
          stroke(
            [
              { x: after, y: top - 7.5 },
              { x: from + column - 4, y: top - 7.5 },
            ],
            FINE,
          ),
        ];
      }),
  };
}

const CAPTIONS: Readonly<Record<View, string>> = {
  side: 'From the side, ahead to the right: numbers stand for both sides',
  behind: 'From behind: left is left',
  above: 'From above, ahead to the right',
};

/** How wide the car from behind is drawn, and how high each view is, mm. */
const BEHIND = 78;
const HIGH = 52;
/** Places on one sketch: more numbers beside it would stand too near each other. */
const MOST = 10;

/** As few as may be, about as long as each other. */
function inGroups(places: readonly Place[]): readonly (readonly Place[])[] {
  const size = Math.ceil(places.length / Math.ceil(places.length / MOST));
  return Array.from({ length: Math.ceil(places.length / size) }, (_, i) => places.slice(i * size, (i + 1) * size));
}

function pictures({ letters, width }: Context, all: ToMeasure): Block {
  const view = (view: View, wide: number): Block =>
    stacked(
      paragraph(letters, CAPTIONS[view], wide, { size: SMALL, after: 0.5, most: 1 }),
      drawn(numberedPlaces({ ...all, view, width: wide, height: HIGH }, letters)),
      gap(2),
    );
  const wide = width - BEHIND - 4;
  return stacked(
    abreast({ left: 0, block: view('side', wide) }, { left: wide + 4, block: view('behind', BEHIND) }),
    view('above', width),
  );
}

/** mm. A box that a figure with a fraction is written in by hand, and the row that it stands in. */
const BOX_HIGH = 8.6;
const ROW = 10.4;
/** What stands before the boxes of a place. */
const NAMED = 52;
/** Between two boxes. */
const APART = 1.5;
/** Empty rows for places that nobody thought of at the desk. */
const SPARE = 2;

/** On one line, or in small letters on two. */
function named({ letters }: Context, words: string, left: number, baseline: number, space: number): readonly Mark[] {
  if (letters.width(words, PLAIN, false) <= space) return [text(left, baseline, words, { size: PLAIN })];
  const lines = wrapped(letters, words, space, SMALL, false, 2);
  const first = baseline + (lines.length - 1) * 1.9;
  return lines.map((line, i) => text(left, first - i * 3.8, line, { size: SMALL }));
}

const COLUMNS = [
  ['left', 'along'],
  ['left', 'offset'],
  ['left', 'height'],
  ['right', 'along'],
  ['right', 'offset'],
  ['right', 'height'],
  [null, 'left–right'],
] as const;

/** With so many empty rows after the last place. */
function placesPart(context: Context, places: readonly Place[], spare: number): Part {
  const { width, unit } = context;
  const column = (width - NAMED) / COLUMNS.length;
  const row = (words: string, mark: string, isAsked: (side: Side | null) => boolean): Block => ({
    height: ROW,
    draw: (left, top) => {
      return [
        text(left, top - 6, mark, { size: PLAIN, bold: true }),
        ...named(context, words, left + 9, top - 6, NAMED - 11),
        ...COLUMNS.flatMap(([side], i): Mark[] =>
          isAsked(side) ? [box(left + NAMED + i * column, top - 0.6, column - APART, BOX_HIGH)] : [],
        ),
      ];
    },
  });
  const heading: Block = {
    height: 11,
    draw: (left, top) => [
      text(left, top - 9, `All in ${unit === 'in' ? 'inches' : 'millimetres'}`, { size: SMALL }),
      ...(['Left', 'Right', 'Width'] as const).map((name, i) =>
        text(left + NAMED + 3 * i * column, top - 4.4, name, { size: PLAIN, bold: true }),
      ),
      ...COLUMNS.map(([, name], i) => text(left + NAMED + i * column, top - 9, name, { size: SMALL })),
    ],
  };
  return {
    heading,
    rows: [
      ...places.map((place) => {
        const sides = new Set(place.sides.map(({ side }) => side));
        const inMiddle = sides.has('middle');
        return row(placeName(place), String(place.number), (side) =>
          side === null ? widthOf(place).length > 0 : sides.has(side) || (inMiddle && side === 'left'),
        );
      }),
      ...Array.from({ length: spare }, () => row('', '', () => true)),
    ],
  };
}

/** mm. "12 L to 13 R" and its box. */
const TAPE = 26;
const TAPE_BOX = 24;

function acrossPart(context: Context, crossed: readonly Crossed[]): readonly Part[] {
  const { width, letters } = context;
  const names = width - 2 * (TAPE + TAPE_BOX + 2);
  const row = (each: Crossed): Block => ({
    height: ROW,
    draw: (left, top) => {
      return [
        ...named(context, `${placeName(each.from)} – ${placeName(each.to)}`, left, top - 6, names - 3),
        ...diagonalsOf(each).flatMap(({ from, to }, i) => {
          const at = left + names + i * (TAPE + TAPE_BOX + 2);
          return [
            text(at + TAPE - 2, top - 6, `${placeMark(...from)} to ${placeMark(...to)}`, {
              size: PLAIN,
              anchor: 'end',
            }),
            box(at + TAPE, top - 0.6, TAPE_BOX, BOX_HIGH),
          ];
        }),
      ];
    },
  });
  const [first, ...rest] = crossed;
  if (first === undefined) return [];
  return [
    part(
      stacked(
        gap(3),
        {
          height: 1,
          draw: (left, top) => [
            stroke(
              [
                { x: left, y: top },
                { x: left + width, y: top },
              ],
              FAINT,
            ),
          ],
        },
        paragraph(letters, TAPES_ACROSS, width, { ...HEAD, after: 0.6 }),
        paragraph(letters, ACROSS, width, { size: 3.9, after: 1 }),
        row(first),
      ),
      ...rest.map(row),
    ),
  ];
}
