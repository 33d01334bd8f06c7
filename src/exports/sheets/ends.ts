/** Both ends side by side: what each is cut to, and cut by cut what the notcher is set to. */
import { wrapHalfTurn, type Radians } from '../../core/geometry/angle.ts';
import {
  endInWords,
  listed,
  plateOffSquare,
  referenceInWords,
  sawCautions,
  scribeInWords,
  turnInWords,
} from '../../core/shop/ends.ts';
import { nodeName, tubeName } from '../../core/solve/names.ts';
import type { Cut, SolvedTube, TubeEnd } from '../../core/solve/types.ts';
import type { Mark } from '../drawing/types.ts';
import type { Context } from './context.ts';
import { dial } from './dial.ts';
import { angleFigure, lengthFigure } from './figures.ts';
import { box, FINE, FIRM, LENGTH, MAIN, PLAIN, SMALL, stroke, text } from './ink.ts';
import { abreast, gap, paragraph, stacked, type Block, type Part } from './page.ts';
import { shrunk, wrapped } from '../drawing/fit.ts';

const BETWEEN = 6;

/** One row that says what the ends are, then a row for each pair of cuts, so that a cluster of many goes on to the next page. */
export function endsPart(context: Context, tube: SolvedTube): Part {
  const width = (context.width - BETWEEN) / 2;
  const sides = ([0, 1] as const).map((which) => ({
    head: endHead(context, tube, which, width),
    cuts: cutBlocks(context, tube, which, width),
  }));
  const [a, b] = [sides[0]!, sides[1]!];
  const pair = (one: Block, other: Block): Block =>
    abreast({ left: 0, block: one }, { left: width + BETWEEN, block: other });
  const first = pair(stacked(a.head, ...a.cuts.slice(0, 1)), stacked(b.head, ...b.cuts.slice(0, 1)));
  const more = Array.from({ length: Math.max(a.cuts.length, b.cuts.length) }, (_, i) =>
    pair(a.cuts[i] ?? gap(0), b.cuts[i] ?? gap(0)),
  );
  return { heading: null, rows: [first, ...more.slice(1), gap(1)] };
}

function endHead(context: Context, tube: SolvedTube, which: 0 | 1, width: number): Block {
  const { derived, letters, unit } = context;
  const end = tube.ends[which];
  const lines = wrapped(letters, capital(endInWords(derived, end)), width - 12, PLAIN, true, 4);
  const node = shrunk(letters, `Node: ${nodeName(derived.job, end.node)}`, width - 12, SMALL);
  const title: Block = {
    height: Math.max(9, lines.length * PLAIN * 1.3 + 4.8) + 0.8,
    draw: (left, top) => [
      box(left, top, 9, 9, null, 0),
      text(left + 4.5, top - 6.7, which === 0 ? 'A' : 'B', { size: 6.4, bold: true, anchor: 'middle', grey: 1 }),
      ...lines.map((line, i) => text(left + 12, top - 3.8 - i * PLAIN * 1.3, line, { size: PLAIN, bold: true })),
      text(left + 12, top - 8.2 - (lines.length - 1) * PLAIN * 1.3, node.text, { size: node.size }),
    ],
  };
  const scribe = scribeInWords(tube);
  const zero = `0°: ${referenceInWords(tube, which)}${scribe === null ? '' : ` (${scribe})`}. Turns as you look into this end.`;
  const lengths = cells(context, width, [
    ['Tip, from node', end.tip === null ? '–' : lengthFigure(end.tip, unit)],
    ['Throat, from node', end.throat === null ? '–' : lengthFigure(end.throat, unit)],
    ['Allowance', lengthFigure(end.allowance, unit)],
  ]);
  const turned = end.cuts.length > 0 || (end.fit === 'plate' && plateOffSquare(end) > 1e-9);
  return stacked(
    rule(width),
    title,
    ...(turned ? [paragraph(letters, zero, width, { after: 1 })] : [gap(1)]),
    lengths,
    ...(end.fit === 'plate' ? [plateBlock(context, end, width)] : []),
  );
}

function plateBlock({ letters }: Context, end: TubeEnd, width: number): Block {
  const over = plateOffSquare(end);
  if (over <= 1e-9) return paragraph(letters, 'Square to the tube: saw set over 0.0°.', width, { size: PLAIN });
  const turn = end.tip === null ? 0 : wrapHalfTurn((end.outer.indexOf(end.tip) * Math.PI) / 180);
  const half = width / 2;
  const [by, side = ''] = turnInWords(turn).split(' ');
  const longest = shrunk(letters, `Longest ${by}`, half - 12, PLAIN + 0.6, true);
  const beside = shrunk(letters, `${side} from 0°`.trimStart(), half - 12, PLAIN);
  return {
    height: 13,
    draw: (left, top) => [
      ...angleBox(letters, left, top, half - 1, 'Saw set over, off square', over, true),
      ...dial({ x: left + half + 5.5, y: top - 6.4 }, 4.9, turn),
      text(left + half + 12, top - 5.4, longest.text, { size: longest.size, bold: true }),
      text(left + half + 12, top - 10.4, beside.text, { size: beside.size }),
    ],
  };
}

function cutBlocks(context: Context, tube: SolvedTube, which: 0 | 1, width: number): Block[] {
  const { derived, letters, unit } = context;
  const { cuts } = tube.ends[which];
  return cuts.map((cut, i) => {
    const run = derived.byId.get(cut.against);
    const name = `${cuts.length > 1 ? `Cut ${i + 1} of ${cuts.length}: ` : 'Cut '}to ${run === undefined ? '' : `${run.number} `}${tubeName(derived, cut.against)}`;
    const fromFirst = i === 0 ? null : wrapHalfTurn(cut.clocking - cuts[0]!.clocking);
    return stacked(
      gap(0.8),
      paragraph(letters, capital(name), width, { size: PLAIN, bold: true, after: 0.3, most: 3 }),
      angles(letters, width, cut),
      turnRow(
        letters,
        width,
        cut.clocking,
        `Turn ${turnInWords(cut.clocking)}`,
        fromFirst === null ? null : `${turnInWords(fromFirst)} from cut 1`,
      ),
      cells(context, width, [
        ['Hole saw', lengthFigure(cut.sawDiameter, unit)],
        ['Saw depth', cut.sawDepth === null ? 'no saw' : lengthFigure(cut.sawDepth, unit)],
        ['Axis offset', Math.abs(cut.axisOffset) < 0.005 ? 'none' : lengthFigure(Math.abs(cut.axisOffset), unit)],
      ]),
      ...offsetWords(cut).map((words) => paragraph(letters, words, width, { after: 0.4 })),
      ...cautionWords(cuts, i).map((words) => paragraph(letters, words, width, { after: 0.4 })),
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

const offsetWords = ({ axisOffset }: Cut): string[] =>
  Math.abs(axisOffset) < 0.005
    ? []
    : [
        `Offset: this tube’s axis passes on the ${axisOffset > 0 ? 'right' : 'left'}, looking into the end with the acute side up.`,
      ];

/** Two angles that add up to a right angle, each with its name over it: to mix them up is the standard slip. */
function angles(letters: Context['letters'], width: number, { offSquare, includedAngle }: Cut): Block {
  const half = width / 2;
  return {
    height: 13,
    draw: (left, top) => [
      ...angleBox(letters, left, top, half - 1, 'Off square: set notcher', offSquare, true),
      ...angleBox(letters, left + half + 1, top, half - 1, 'Included: between tubes', includedAngle, false),
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
    box(left, top - 0.5, width, 12, isSet ? FIRM : FINE),
    text(left + 1.5, top - 4.2, head.text, { size: head.size }),
    text(left + 1.5, top - 11.2, angleFigure(angle), { size: MAIN, bold: isSet }),
  ];
}

function turnRow(letters: Context['letters'], width: number, turn: Radians, words: string, more: string | null): Block {
  const room = width - 15;
  const fitted = shrunk(letters, words, room, MAIN - 1, true);
  return {
    height: 11,
    draw: (left, top) => [
      ...dial({ x: left + 5.5, y: top - 5.4 }, 4.9, turn),
      text(left + 14, top - (more === null ? 7.6 : 5), fitted.text, { size: fitted.size, bold: true }),
      ...(more === null ? [] : [text(left + 14, top - 9.8, more, { size: PLAIN })]),
    ],
  };
}

/** Figures in a row, each under its name. */
export function cells({ letters }: Context, width: number, columns: readonly (readonly [string, string])[]): Block {
  const each = width / columns.length;
  return {
    height: 10,
    draw: (left, top) =>
      columns.flatMap(([name, value], i) => {
        const head = shrunk(letters, name, each - 1.5, SMALL);
        const figure = shrunk(letters, value, each - 2.5, LENGTH, true);
        return [
          text(left + i * each, top - 3.2, head.text, { size: head.size }),
          text(left + i * each, top - 8.6, figure.text, { size: figure.size, bold: true }),
        ];
      }),
  };
}

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

export const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
