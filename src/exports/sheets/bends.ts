/** What is done at the bender, one row a bend in the order of bending, with boxes for what the machine and the level then read;
 * what the job holds of that already stands in them. */
import type { Radians } from '../../core/geometry/angle.ts';
import { leansInWords, roundingInWords, sideOf, troubleOf, type TapeView } from '../../core/shop/mark-words.ts';
import { bendMarks, type BendMarks } from '../../core/shop/marks.ts';
import { mendingPullOf, type PullAdvice } from '../../core/springback/pull-advice.ts';
import { halfWidthInWords, KIND_WORDS, pullFigure, pullNote, workedOut } from '../../core/springback/pull-words.ts';
import { formatAngle } from '../../core/units/angle.ts';
import { tapeReading } from '../../core/units/tape.ts';
import type { TapeStep } from '../../core/shop/tape.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { LEAST_SIZE } from '../drawing/fit.ts';
import type { Mark } from '../drawing/types.ts';
import type { Context } from './context.ts';
import { dial } from './dial.ts';
import { angleFigure, decimalFigure, markFigure, lengthFigure } from './figures.ts';
import { arrowhead, box, disc, FIRM, HAIR, MAIN, stroke, text } from './ink.ts';
import { zeroInWords, type Measured } from './measured.ts';
import { capital } from './ends.ts';
import { paragraph, part, type Block, type Part } from './page.ts';

/** Right edges of the columns, of the width between margins; figures stand against them. */
const COLUMNS = { mark: 0.3, rotation: 0.53, net: 0.66, pull: 0.81, pulled: 0.905, came: 1 };
const LINE = 8;

/** Empty for a straight tube. */
export function bendParts(context: Context, tube: SolvedTube, marking: Measured): readonly Part[] {
  const { steps, rounding, zero } = marking.sheet;
  if (steps.length === 0) return [];
  const { letters, width, unit } = context;
  const marks = bendMarks(tube);
  const rows = steps.flatMap((step, i) => [
    ...(i > 0 && steps[i - 1]!.front !== step.front ? [turnRow(context, step)] : []),
    bendRow(context, tube, step, marks[step.bend - 1]!, marking),
  ]);
  const rounded = roundingInWords(rounding, marking.view.from, unit);
  const leans = leansInWords(steps, unit, marking.view.fine);
  const notes = [
    `${zeroInWords(marking, lengthFigure(zero, unit))} A bend lies on its arrow’s side of the mark.`,
    'Dial: the turn as seen from the zero along the tube; up is the plane of the bend that it is counted from.',
    ...plusInWords(steps),
    `End ${steps[0]!.front} in front${steps.some(({ front }) => front !== steps[0]!.front) ? ' first' : ''}.`,
    pullNote(
      tube.pullLaw,
      marks.map(({ pull }) => pull),
      mendingPullOf(tube),
    ),
    ...(leans === null ? [] : [leans]),
    ...(rounded === null ? [] : [rounded]),
  ];
  return [
    { heading: headings(context, marking.view.style), rows },
    part(paragraph(letters, notes.join(' '), width, { after: 1.5 })),
  ];
}

/** What a mark is a mark of, where the rows themselves do not tell. */
const MARKED: Readonly<Record<TapeView['style'], string>> = {
  start: 'Start of bend',
  clamp: 'Clamp mark',
  middle: 'Middle of bend',
  tangents: 'Mark',
};

function headings({ width, unit }: Context, style: TapeView['style']): Block {
  return {
    height: 6.5,
    draw: (left, top) => {
      const at = (share: number): number => left + share * width;
      const head = (x: number, words: string, anchor: 'start' | 'middle' | 'end' = 'end'): Mark =>
        text(x, top - 4, words, { bold: true, anchor });
      return [
        head(left, 'Bend', 'start'),
        head(at(COLUMNS.mark) - 4, `${MARKED[style]}, ${unit}`),
        head(at(COLUMNS.rotation), 'Rotation'),
        head(at(COLUMNS.net), 'Net'),
        head(at(COLUMNS.pull), 'Pull to'),
        head((at(COLUMNS.pull) + at(COLUMNS.pulled)) / 2 + 1.25, 'Pulled', 'middle'),
        head((at(COLUMNS.pulled) + at(COLUMNS.came)) / 2 + 1.25, 'Came to', 'middle'),
        stroke(
          [
            { x: left, y: top - 5.6 },
            { x: left + width, y: top - 5.6 },
          ],
          FIRM,
        ),
      ];
    },
  };
}

const turnRow = ({ letters, width }: Context, { front }: TapeStep): Block =>
  paragraph(letters, `⇄ Turn the tube end for end: end ${front} in front`, width, { bold: true, after: 1 });

function bendRow(context: Context, tube: SolvedTube, step: TapeStep, marks: BendMarks, { view }: Measured): Block {
  const { unit, width, letters } = context;
  const troubles = step.marks.flatMap((mark) => troubleOf(mark) ?? []);
  const lines = step.marks.length;
  const bend = tube.bends[step.bend - 1]!;
  const { pull } = marks;
  const made = context.derived.job.bent
    .find((bent) => bent.tube === tube.id)
    ?.bends.find(({ bend }) => bend === step.bend);
  const readings = [made?.pulled, made?.net];
  const footing = paragraph(letters, underRow(tube, step, marks, unit), width - 11, { after: 0 });
  const warnings = troubles.map((words) => paragraph(letters, `! ${words}`, width - 14, { bold: true, after: 0 }));
  const figures = Math.max(lines * LINE, 10.4) + 0.4;
  const height = figures + footing.height + warnings.reduce((sum, each) => sum + each.height, 0) + 0.8;
  return {
    height,
    draw: (left, top) => {
      const at = (share: number): number => left + share * width;
      const base = top - 6.7;
      const big = (share: number, words: string): Mark =>
        text(at(share), base, words, { size: MAIN, bold: true, anchor: 'end' });
      const number = { x: left + 5, y: top - 5.4 };
      let under = top - figures - footing.height;
      return [
        disc(number, 4.3, null, 0),
        text(number.x, number.y - 2, String(step.bend), { size: 5.4, bold: true, anchor: 'middle', grey: 1 }),
        ...step.marks.flatMap((mark, i): Mark[] => {
          const y = base - i * LINE;
          const shown = markFigure(tapeReading(mark.exact, unit, view.fine));
          const { arrow } = sideOf(mark, step);
          const right = at(COLUMNS.mark) - 6;
          const wide = letters.width(shown, MAIN, true);
          return [
            text(right, y, shown, { size: MAIN, bold: true, anchor: 'end' }),
            ...(arrow.includes('▸') ? [arrowhead({ x: right + 6, y: y + 2.5 }, 0, 4)] : []),
            ...(arrow.includes('◂') ? [arrowhead({ x: right - wide - 5, y: y + 2.5 }, Math.PI, 4)] : []),
            ...(lines > 1 ? [text(left + 10.4, y + 0.2, mark.kind, { size: LEAST_SIZE })] : []),
          ];
        }),
        ...(step.rotationFrom === null
          ? [big(COLUMNS.rotation, '–')]
          : [
              ...dial({ x: at(COLUMNS.mark) + 9, y: top - 5.5 }, 4.9, seenFromZero(step)),
              big(COLUMNS.rotation, angleFigure(step.rotation)),
            ]),
        big(COLUMNS.net, angleFigure(bend.angle)),
        big(COLUMNS.pull, pullFigure(pull)),
        text(at(COLUMNS.pull), top - 10.1, KIND_WORDS[pull.kind], { size: LEAST_SIZE, bold: true, anchor: 'end' }),
        ...readings.flatMap((reading, i): Mark[] => {
          const from = at(i === 0 ? COLUMNS.pull : COLUMNS.pulled) + 2.5;
          const wide = width * (COLUMNS.came - COLUMNS.pulled) - 2.5;
          const frame = box(from, top - 0.9, wide, 9.3);
          if (reading === undefined) return [frame];
          const shown = `${formatAngle(reading, 1)}°`;
          return [frame, text(from + wide / 2, top - 7.2, shown, { size: 4.2, anchor: 'middle' })];
        }),
        ...footing.draw(left + 11, top - figures),
        ...warnings.flatMap((warning) => {
          const drawn = warning.draw(left + 11, under);
          under -= warning.height;
          return drawn;
        }),
        stroke(
          [
            { x: left, y: top - height + 0.5 },
            { x: left + width, y: top - height + 0.5 },
          ],
          HAIR,
        ),
      ];
    },
  };
}

/** What the bend is besides: where it lies, what it is counted from, how sure the pull is, the straight before it from end A. */
function underRow(tube: SolvedTube, step: TapeStep, marks: BendMarks, unit: Context['unit']): string {
  const bend = tube.bends[step.bend - 1]!;
  const straight = tube.straights[step.bend - 1]!;
  const from = step.bend === 1 ? 'node A' : `bend ${step.bend - 1}`;
  const isLast = step.bend === tube.bends.length;
  return [
    capital(sideOf(step.marks[0]!, step).words),
    `straight from ${from} ${decimalFigure(straight, unit)}${straight < 0 ? ' (overlaps)' : ''}`,
    ...(isLast ? [`to node B ${decimalFigure(tube.straights.at(-1)!, unit)}`] : []),
    ...(step.rotationFrom === null ? [] : [`rotation from bend ${step.rotationFrom}`]),
    ...pullInWords(marks.pull),
    ...(oneRadius(tube) ? [] : [`CLR ${decimalFigure(bend.radius, unit)}`]),
  ].join(' · ');
}

/** How sure it is, and what was worked out where the machine's scale shows another. */
function pullInWords(pull: PullAdvice): string[] {
  const exact = workedOut(pull);
  const sure = pull.kind === 'law' && pull.within !== null ? [`± ${halfWidthInWords(pull.within)}`] : [];
  const words = [...(exact === null ? [] : [exact]), ...sure];
  return words.length === 0 ? [] : [`pull ${words.join(' ')}`];
}

/** Whether all bends have the same centreline radius to what is shown: then it stands once, with the die. */
export const oneRadius = ({ bends }: SolvedTube): boolean =>
  bends.every(({ radius }) => Math.abs(radius - bends[0]!.radius) < 0.005);

/** Which way plus goes on the dials; nothing where it is not the same on all. */
function plusInWords(steps: readonly TapeStep[]): string[] {
  const ways = new Set(steps.map(({ front, towards }) => (front === towards ? 'anticlockwise' : 'clockwise')));
  return ways.size === 1 ? [`Plus is ${[...ways][0]!} on it.`] : [];
}

/** Clockwise as seen from the zero along the tape; a rotation is told about the direction from the end in front. */
const seenFromZero = ({ rotation, front, towards }: TapeStep): Radians => (front === towards ? 0 - rotation : rotation);
