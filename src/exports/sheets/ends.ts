/** Both ends side by side: what each is cut to, and cut by cut what the notcher is set to. */
import { deepSide, longSide, type EndMark } from '../../core/cope/end-mark.ts';
import { capital, listed } from '../../core/words/lists.ts';
import { plateOffSquare } from '../../core/cope/end-cut.ts';
import { scribedInWords } from '../../core/words/turns.ts';
import { wrapHalfTurn, type Radians } from '../../core/geometry/angle.ts';
import {
  deepSideOf,
  bothInWords,
  lineInWords,
  longSideOf,
  lookInWords,
  markInWords,
  offsetInWords,
  ROUND,
  throatInWords,
} from '../../core/words/cope-mark.ts';
import {
  ALLOWANCE,
  endInWords,
  fromNodeInWords,
  insteadOfNotcher,
  SAW_DEPTH,
  sawCautions,
  turnInWords,
} from '../../core/words/ends.ts';
import type { BendStep } from '../../core/job/kinds/bent.ts';
import { ANGLE_ROUNDING, ROUNDING } from '../../core/geometry/tolerance.ts';
import { numbered } from '../shared/wrap-words.ts';
import { landedOn } from '../../core/solve/bar-tubes.ts';
import { endNodeName } from '../../core/solve/names.ts';
import type { Cut, SolvedTube } from '../../core/solve/types.ts';
import type { Mark } from '../../drawing/types.ts';
import { END_WIDTH, endPicture } from '../../drawing/end-on/cope.ts';
import type { Context } from './context.ts';
import { angleFigure, lengthFigure, roundFigure } from '../../drawing/figures.ts';
import { box, FINE, FIRM, LENGTH, MAIN, PLAIN, SMALL, stroke, text } from '../../drawing/ink.ts';
import { abreast, drawn, gap, paragraph, stacked, type Block, type Part } from './page.ts';
import { LEAST_SIZE, shrunk, wrapped } from '../../drawing/fit.ts';

const BETWEEN = 6;

/**
 * One row that says what the ends are, then a row for each pair of cuts, so that a cluster of many goes on to the next page. `caution`
 * stands under the shorter of the two where there is room for it, else below both.
 */
export function endsPart(context: Context, tube: SolvedTube, order: readonly BendStep[], caution: string): Part {
  const width = (context.width - BETWEEN) / 2;
  const side = (which: 0 | 1): Side => ({
    head: endHead(context, tube, order, which, width),
    cuts: cutBlocks(context, tube, which, width),
  });
  const [a, b] = [side(0), side(1)];
  const pair = (one: Block, other: Block): Block =>
    abreast({ left: 0, block: one }, { left: width + BETWEEN, block: other });
  const first = ({ head, cuts }: Side): Block => stacked(head, ...cuts.slice(0, 1));
  const [left, right] = [first(a), first(b)];
  const more = Array.from({ length: Math.max(a.cuts.length, b.cuts.length, 1) - 1 }, (_, i) =>
    pair(a.cuts[i + 1] ?? gap(0), b.cuts[i + 1] ?? gap(0)),
  );
  const warned = stacked(gap(2), paragraph(context.letters, caution, width, { after: 0 }));
  if (more.length === 0 && Math.abs(left.height - right.height) >= warned.height) {
    const under = (one: Block, other: Block): Block => (one.height < other.height ? stacked(one, warned) : one);
    return { heading: null, rows: [pair(under(left, right), under(right, left)), gap(1)] };
  }
  return {
    heading: null,
    rows: [pair(left, right), ...more, stacked(gap(1), paragraph(context.letters, caution, context.width))],
  };
}

interface Side {
  readonly head: Block;
  readonly cuts: readonly Block[];
}

function endHead(context: Context, tube: SolvedTube, order: readonly BendStep[], which: 0 | 1, width: number): Block {
  const { derived, letters, unit } = context;
  const end = tube.ends[which];
  const lines = wrapped(letters, capital(endInWords(derived, end)), width - 12, PLAIN, true, 4);
  const node = shrunk(letters, `Node: ${endNodeName(derived.job, end.node)}`, width - 12, SMALL);
  const title: Block = {
    height: Math.max(9, lines.length * PLAIN * 1.3 + 4.2) + 0.6,
    draw: (left, top) => [
      box(left, top, 9, 9, null, 0),
      text(left + 4.5, top - 6.7, which === 0 ? 'A' : 'B', { size: 6.4, bold: true, anchor: 'middle', grey: 1 }),
      ...lines.map((line, i) => text(left + 12, top - 3.8 - i * PLAIN * 1.3, line, { size: PLAIN, bold: true })),
      text(left + 12, top - 8.2 - (lines.length - 1) * PLAIN * 1.3, node.text, { size: node.size }),
    ],
  };
  const lengths = cells(context, width, [
    [fromNodeInWords('Tip', end.tip), end.tip === null ? 'none' : lengthFigure(Math.abs(end.tip), unit)],
    [fromNodeInWords('Throat', end.throat), end.throat === null ? 'none' : lengthFigure(Math.abs(end.throat), unit)],
    [ALLOWANCE, lengthFigure(end.allowance, unit)],
  ]);
  const turned = end.cuts.length > 0 || (end.plateNormal !== null && plateOffSquare(end) > ANGLE_ROUNDING);
  const said = [
    `${lineInWords(tube, which)} ${lookInWords(which)}`,
    ...[scribedInWords(tube, order, which, unit) ?? []].flat(),
  ];
  return stacked(
    rule(width),
    title,
    ...(turned ? [paragraph(letters, said.join(' '), width, { after: 1 })] : [gap(1)]),
    lengths,
    ...(end.plateNormal !== null ? [plateBlock(context, tube, which, width)] : []),
  );
}

function plateBlock(context: Context, tube: SolvedTube, which: 0 | 1, width: number): Block {
  const { letters } = context;
  const long = longSide(tube, which);
  if (long === null) return paragraph(letters, 'Square to the tube: saw set over 0.0°.', width, { size: PLAIN });
  const over = plateOffSquare(tube.ends[which]);
  const space = width - END_WIDTH - 2;
  const set: Block = {
    height: 12,
    draw: (left, top) => angleBox(letters, left, top, space, 'Saw set over, off square', over, true),
  };
  return besidePicture([long], tube, stacked(set, cells(context, space, markCells(context, longSideOf(tube), long))));
}

/** The end as one looks at it, on the left of what is said of it. */
function besidePicture(marks: readonly EndMark[], tube: SolvedTube, block: Block): Block {
  const picture = drawn(endPicture(marks, tube.bends.length > 0));
  return abreast({ left: 0, block: picture }, { left: END_WIDTH + 2, block });
}

const markCells = ({ unit }: Context, what: string, mark: EndMark): [string, string][] => [
  [what, markInWords(mark)],
  [ROUND, roundFigure(mark.round, unit)],
];

function cutBlocks(context: Context, tube: SolvedTube, which: 0 | 1, width: number): Block[] {
  const { derived, letters, unit } = context;
  const { cuts, high } = tube.ends[which];
  const marks = cuts.map((cut) => deepSide(tube, cut));
  // Where the template is used instead, once under the first cut that sends one to it.
  const first = cuts.findIndex((cut) => cut.reaches && insteadOfNotcher(cut) !== null);
  const throat = (i: number): string[] =>
    i !== first || high === null ? [] : [throatInWords(tube, which, high.phi) ?? []].flat();
  return cuts.map((cut, i) => {
    const name = `${cuts.length > 1 ? `Cut ${i + 1} of ${cuts.length}: ` : 'Cut '}to ${numbered(landedOn(derived.byId, cut))}`;
    const space = i === 0 ? width - END_WIDTH - 2 : width;
    const turned = turnInWords(wrapHalfTurn(cut.clocking - cuts[0]!.clocking));
    const instead = insteadOfNotcher(cut);
    const fromFirst = `${turned} from cut 1.`;
    const set = stacked(
      cells(context, space, markCells(context, deepSideOf(tube), marks[i]!)),
      ...(i === 0 ? [] : [paragraph(letters, fromFirst, space, { after: 0 })]),
      ...(instead !== null && offsetInWords(cut) === null
        ? []
        : [
            cells(context, space, [
              ...(instead === null
                ? ([
                    ['Hole saw', lengthFigure(cut.sawDiameter, unit)],
                    [SAW_DEPTH, lengthFigure(cut.sawDepth!, unit)],
                  ] as const)
                : []),
              ['Axis offset', offsetInWords(cut) === null ? 'none' : lengthFigure(Math.abs(cut.axisOffset), unit)],
            ]),
          ]),
      ...throat(i).map((words) => paragraph(letters, words, space, { after: 0.4 })),
    );
    return stacked(
      gap(0.8),
      paragraph(letters, capital(name), width, { size: PLAIN, bold: true, after: 0.3, most: 3 }),
      instead === null ? angles(letters, width, cut) : noAngles(letters, width, cut, instead),
      i === 0 ? besidePicture(marks, tube, set) : set,
      ...[bothInWords(marks[i]!) ?? [], offsetInWords(cut) ?? [], cautionWords(cuts, i)]
        .flat()
        .map((words) => paragraph(letters, words, width, { after: 0.4 })),
      gap(0.5),
    );
  });
}

/** What is said against a plain saw cut: for all the cuts of the end that it holds for, beside the first of them. */
function cautionWords(cuts: readonly Cut[], which: number): string[] {
  return sawCautions(cuts[which]!).flatMap((caution) => {
    const held = cuts.flatMap((cut, i) => (sawCautions(cut).includes(caution) ? [i] : []));
    if (held[0] !== which) return [];
    return [`! ${held.length > 1 ? `Cuts ${listed(held.map((i) => String(i + 1)))}: ` : ''}${caution}`];
  });
}

/** Two angles that add up to a right angle, each with its name over it: they are mixed up easily. */
function angles(letters: Context['letters'], width: number, { offSquare, includedAngle }: Cut): Block {
  const half = width / 2;
  return {
    height: 12,
    draw: (left, top) => [
      ...angleBox(letters, left, top, half - 1, 'Off square: set notcher', offSquare, true),
      ...angleBox(letters, left + half + 1, top, half - 1, 'Included: between tubes', includedAngle, false),
    ],
  };
}

/** What is done instead stands where the notcher's angle would; both angles stay, small, to check by. */
function noAngles(
  letters: Context['letters'],
  width: number,
  { offSquare, includedAngle }: Cut,
  instead: string,
): Block {
  const half = width / 2;
  const lines = instead.split(/(?<=:) /u);
  const check = [`Off square ${angleFigure(offSquare)}`, `Between tubes ${angleFigure(includedAngle)}`];
  return {
    height: 12,
    draw: (left, top) => [
      box(left, top - 0.5, half - 1, 11, FIRM),
      ...lines.map((line, i) => {
        const set = shrunk(letters, line, half - 4, PLAIN, true);
        const up = lines.length === 1 ? 7.4 : 5 + i * 4.6;
        return text(left + 1.5, top - up, set.text, { size: set.size, bold: true });
      }),
      box(left + half + 1, top - 0.5, half - 1, 11, FINE),
      ...check.map((line, i) => {
        const set = shrunk(letters, line, half - 4, SMALL);
        return text(left + half + 2.5, top - 4.6 - i * 4.6, set.text, { size: set.size });
      }),
    ],
  };
}

function angleBox(
  letters: Context['letters'],
  left: number,
  top: number,
  width: number,
  name: string,
  angle: Radians,
  isSet: boolean,
): Mark[] {
  const head = shrunk(letters, name, width - 3, SMALL);
  return [
    box(left, top - 0.5, width, 11, isSet ? FIRM : FINE),
    text(left + 1.5, top - 3.9, head.text, { size: head.size }),
    text(left + 1.5, top - 10.2, angleFigure(angle), { size: MAIN, bold: isSet }),
  ];
}

/**
 * Figures in a row, each under its name, in columns alike where all have room. Else names and fractions, which could not be read any
 * smaller, keep the room that they need, and other figures are set smaller.
 */
export function cells({ letters }: Context, width: number, columns: readonly (readonly [string, string])[]): Block {
  const wanted = columns.map(([name, value]) =>
    Math.max(letters.width(name, SMALL, false) + 1.6, letters.width(value, LENGTH, true) + 2.5),
  );
  const least = columns.map(([name, value], i) =>
    value.includes('⁄') ? wanted[i]! : letters.width(name, LEAST_SIZE, false) + 1.6,
  );
  const alike = wanted.every((each) => each <= width / columns.length);
  const more = wanted.map((each, i) => each - least[i]!);
  const spare = Math.max(0, width - total(least)) / Math.max(total(more), ROUNDING);
  return {
    height: 9.5,
    draw: (left, top) => {
      let at = left;
      return columns.flatMap(([name, value], i) => {
        const each = alike ? width / columns.length : least[i]! + Math.min(spare, 1) * more[i]!;
        const head = shrunk(letters, name, each - 1.5, SMALL);
        const figure = shrunk(letters, value, each - 2.4, LENGTH, true);
        const from = at;
        at += each;
        return [
          text(from, top - 3, head.text, { size: head.size }),
          text(from, top - 8.4, figure.text, { size: figure.size, bold: true }),
        ];
      });
    },
  };
}

const total = (lengths: readonly number[]): number => lengths.reduce((sum, each) => sum + each, 0);

const rule = (width: number): Block => ({
  height: 1.2,
  draw: (left, top) => [
    stroke(
      [
        { x: left, y: top },
        { x: left + width, y: top },
      ],
      FIRM,
    ),
  ],
});
