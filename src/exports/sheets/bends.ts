/** What is done at the bender, one row a bend in the order of bending, with boxes for what the machine and the level then read;
 * what the job holds of that already stands in them. */
import { pulledTo } from '../../core/job/read-by-hand.ts';
import { leansInWords, markMeets, roundingInWords, sideNote, sideOf, troubleOf } from '../../core/words/marks.ts';
import { bendMarks, type BendMarks } from '../../core/marks/marks.ts';
import { mendingPullOf, type PullAdvice } from '../../core/springback/pull-advice.ts';
import {
  kindInWords,
  onScale as scaleInWords,
  pullFigure,
  pullHead,
  pullNote,
  sureInWords,
} from '../../core/words/pulls.ts';
import { rotationReading, type RotationReading } from '../../core/run/rotation-reading.ts';
import { isScribed } from '../../core/run/scribed-line.ts';
import { END_FOR_END, firstBendInWords, inFront, onScale, seamInWords, turnSentences } from '../../core/words/turns.ts';
import { isSeamed } from '../../core/springback/steels.ts';
import type { Degrees } from '../../core/geometry/angle.ts';
import { FIRST_BENDER } from '../../core/job/kinds/bender.ts';
import type { Marking } from '../../core/job/kinds/marking.ts';
import { formatAngle } from '../../core/units/angle.ts';
import { tapeReading } from '../../core/units/tape.ts';
import type { TapeStep } from '../../core/marks/tape.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { LEAST_SIZE } from '../../drawing/fit.ts';
import { moved } from '../../drawing/move.ts';
import { TURN_PICTURE, turnPicture, turnSign } from '../../drawing/end-on/turn.ts';
import type { Mark } from '../../drawing/types.ts';
import type { Context } from './context.ts';
import { angleFigure, decimalFigure, markFigure, lengthFigure } from '../../drawing/figures.ts';
import { arrowhead, box, disc, FIRM, HAIR, MAIN, stroke, text } from '../../drawing/ink.ts';
import type { Measured } from '../../drawing/blank/measured.ts';
import { zeroInWords } from './measured.ts';
import { capital } from '../../core/words/lists.ts';
import { abreast, paragraph, part, stacked, type Block, type Part } from './page.ts';

/** Right edges of the columns, of the width between margins; figures stand against them. */
const COLUMNS = { mark: 0.3, rotation: 0.53, net: 0.66, pull: 0.81, pulled: 0.905, came: 1 };
const LINE = 8;
/** Of what is no number to pull to, but one to start at; mm. */
const ESTIMATE_SIZE = 5;
/** Where words begin under the figures of a row. */
const INDENT = 11;

/** Empty for a straight tube. */
export function bendParts(context: Context, tube: SolvedTube, marking: Measured): readonly Part[] {
  const { steps, rounding, zero } = marking.tape;
  if (steps.length === 0) return [];
  const { letters, width, unit } = context;
  const marks = bendMarks(tube);
  const scribed = isScribed(tube, steps);
  const rows = steps.flatMap((step, i) => [
    ...(i > 0 && steps[i - 1]!.front !== step.front ? [turnRow(context, step)] : []),
    bendRow(context, tube, i, marks[step.bend - 1]!, marking),
  ]);
  const rounded = roundingInWords(rounding, marking.feed.from, unit);
  const leans = leansInWords(steps, unit, marking.feed.fine);
  const notes = [
    `${zeroInWords(marking, lengthFigure(zero, unit))} ${sideNote(marking.feed.mark)}`,
    ...(marking.feed.mark === 'clamp' ? [`${capital(markMeets('clamp', tube.die!.clampOffset, unit))}.`] : []),
    ...(scribed || isSeamed(tube.section) ? [firstBendInWords(tube.section, scribed)] : []),
    inFront(steps[0]!.front),
    pullNote(
      tube.pullLaw,
      marks.map(({ pull }) => pull),
      mendingPullOf(tube),
    ),
    ...(leans === null ? [] : [leans]),
    ...(rounded === null ? [] : [rounded]),
  ];
  return [
    { heading: headings(context, marking.feed.mark, pullHead(marks.map(({ pull }) => pull))), rows },
    part(paragraph(letters, notes.join(' '), width, { after: 1 })),
  ];
}

/** What a mark is a mark of, where the rows themselves do not say. */
const MARKED: Readonly<Record<Marking['mark'], string>> = {
  start: 'Start of bend',
  clamp: 'Clamp mark',
  middle: 'Middle of bend',
  tangents: 'Mark',
};

function headings({ width, unit }: Context, mark: Marking['mark'], pulls: string): Block {
  return {
    height: 6,
    draw: (left, top) => {
      const at = (share: number): number => left + share * width;
      const head = (x: number, words: string, anchor: 'start' | 'middle' | 'end' = 'end'): Mark =>
        text(x, top - 3.7, words, { bold: true, anchor });
      return [
        head(left, 'Bend', 'start'),
        head(at(COLUMNS.mark) - 4, `${MARKED[mark]}, ${unit}`),
        head(at(COLUMNS.rotation), 'Turn the tube'),
        head(at(COLUMNS.net), 'Finished'),
        head(at(COLUMNS.pull), pulls),
        head((at(COLUMNS.pull) + at(COLUMNS.pulled)) / 2 + 1.25, 'Pulled', 'middle'),
        head((at(COLUMNS.pulled) + at(COLUMNS.came)) / 2 + 1.25, 'Came to', 'middle'),
        stroke(
          [
            { x: left, y: top - 5.2 },
            { x: left + width, y: top - 5.2 },
          ],
          FIRM,
        ),
      ];
    },
  };
}

const turnRow = ({ letters, width }: Context, { front }: TapeStep): Block =>
  paragraph(letters, `⇄ ${END_FOR_END}: end ${front} in front`, width, { bold: true, after: 1 });

function bendRow(context: Context, tube: SolvedTube, index: number, marks: BendMarks, { feed, tape }: Measured): Block {
  const step = tape.steps[index]!;
  const turn = rotationReading(tube, tape.steps, index);
  const { unit, width, letters } = context;
  const troubles = step.marks.flatMap((mark) => troubleOf(mark) ?? []);
  const lines = step.marks.length;
  const bend = tube.bends[step.bend - 1]!;
  const { pull } = marks;
  const made = context.derived.job.bent
    .find((bent) => bent.tube === tube.id)
    ?.bends.find(({ bend }) => bend === step.bend);
  const readings = [pulledTo(made), made?.net ?? null];
  const footing = underRow(context, tube, step, marks, turn);
  const warnings = troubles.map((words) => paragraph(letters, `! ${words}`, width - INDENT, { bold: true, after: 0 }));
  const figures = Math.max(lines * LINE, 11);
  const height = figures + footing.height + warnings.reduce((sum, each) => sum + each.height, 0) + 0.8;
  return {
    height,
    draw: (left, top) => {
      const at = (share: number): number => left + share * width;
      const base = top - 6.5;
      const big = (share: number, words: string, size = MAIN): Mark =>
        text(at(share), base, words, { size, bold: true, anchor: 'end' });
      const number = { x: left + 5, y: top - 5.4 };
      let under = top - figures - footing.height;
      return [
        disc(number, 4.3, null, 0),
        text(number.x, number.y - 2, String(step.bend), { size: 5.4, bold: true, anchor: 'middle', grey: 1 }),
        ...step.marks.flatMap((mark, i): Mark[] => {
          const y = base - i * LINE;
          const shown = markFigure(tapeReading(mark.exact, unit, feed.fine));
          const { arrow } = sideOf(mark, step);
          const right = at(COLUMNS.mark) - 6;
          const wide = letters.width(shown, MAIN, true);
          // Long figures push their arrow against the word: it stands higher then.
          const meets =
            arrow.includes('◂') && right - wide - 5.5 < left + 10.4 + letters.width(mark.kind, LEAST_SIZE, false);
          return [
            text(right, y, shown, { size: MAIN, bold: true, anchor: 'end' }),
            ...(arrow.includes('▸') ? [arrowhead({ x: right + 6, y: y + 2.5 }, 0, 4)] : []),
            ...(arrow.includes('◂') ? [arrowhead({ x: right - wide - 5, y: y + 2.5 }, Math.PI, 4)] : []),
            ...(lines > 1 ? [text(left + 10.4, y + (meets ? 4.4 : 0.2), mark.kind, { size: LEAST_SIZE })] : []),
          ];
        }),
        big(COLUMNS.rotation, turn === null ? 'none' : `${onScale(turn.turn)}°`),
        ...(turn?.sense == null
          ? []
          : turnSign(
              { x: at(COLUMNS.rotation) - letters.width(`${onScale(turn.turn)}°`, MAIN, true) - 4.4, y: base + 2.5 },
              turn.sense,
            )),
        big(COLUMNS.net, angleFigure(bend.angle)),
        big(COLUMNS.pull, pullFigure(pull), pull.kind === 'estimate' ? ESTIMATE_SIZE : MAIN),
        text(at(COLUMNS.pull), top - 10.4, kindInWords(pull), { size: LEAST_SIZE, bold: true, anchor: 'end' }),
        ...readings.flatMap((reading, i): Mark[] => {
          const from = at(i === 0 ? COLUMNS.pull : COLUMNS.pulled) + 2.5;
          const wide = width * (COLUMNS.came - COLUMNS.pulled) - 2.5;
          const frame = box(from, top - 0.8, wide, 8.6);
          if (reading === null) return [frame];
          const shown = `${formatAngle(reading, 1)}°`;
          return [frame, text(from + wide / 2, top - 6.8, shown, { size: 4.2, anchor: 'middle' })];
        }),
        ...footing.draw(left, top - figures),
        ...warnings.flatMap((warning) => {
          const drawn = warning.draw(left + INDENT, under);
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

/** Under the figures: what else the bend is, and how the tube is turned before it, from behind as it is seen beside its words. */
function underRow(
  context: Context,
  tube: SolvedTube,
  step: TapeStep,
  marks: BendMarks,
  turn: RotationReading | null,
): Block {
  const { letters, width, unit } = context;
  const shown = turn !== null && (turn.turn > 0 || !turn.asItLies) ? turn : null;
  const { width: wide, height } = TURN_PICTURE;
  const from = shown === null ? INDENT : wide + 2.5;
  const lines = (words: string, bold = false): Block => paragraph(letters, words, width - from, { bold, after: 0 });
  const [first = '', ...others] = shown === null ? [] : turnSentences(shown, unit);
  const seam = turn === null ? null : seamInWords(tube.section, turn);
  const words = stacked(
    lines(besides(tube, step, marks, turn, unit)),
    ...(shown === null ? [] : [lines(first, true), lines(others.join(' '))]),
    ...(seam === null ? [] : [lines(seam)]),
  );
  const picture: Block = {
    height,
    draw: (left, top) => (shown === null ? [] : moved(turnPicture(shown), left, top - height)),
  };
  return abreast({ left: from, block: words }, ...(shown === null ? [] : [{ left: 0, block: picture }]));
}

/** What the bend is besides: where it lies, the straight before it from end A, how sure the pull is; that nothing is turned. */
function besides(
  tube: SolvedTube,
  step: TapeStep,
  marks: BendMarks,
  turn: RotationReading | null,
  unit: Context['unit'],
): string {
  const bend = tube.bends[step.bend - 1]!;
  const straight = tube.straights[step.bend - 1]!;
  const from = step.bend === 1 ? 'node A' : `bend ${step.bend - 1}`;
  const isLast = step.bend === tube.bends.length;
  return [
    capital(sideOf(step.marks[0]!, step).words),
    `straight from ${from} ${decimalFigure(straight, unit)}${straight < 0 ? ' (overlaps)' : ''}`,
    ...(isLast ? [`to node B ${decimalFigure(tube.straights.at(-1)!, unit)}`] : []),
    ...(turn?.turn === 0 && turn.asItLies ? ['do not turn the tube'] : []),
    ...pullInWords(marks.pull, (tube.die?.bender ?? FIRST_BENDER).pullStep),
    ...(oneRadius(tube) ? [] : [`CLR ${decimalFigure(bend.radius, unit)}`]),
  ].join(' · ');
}

/** How sure it is, and what it is exactly where the machine's scale shows another. */
function pullInWords(pull: PullAdvice, step: Degrees): string[] {
  const exact = scaleInWords(pull, step);
  const sure = pull.kind === 'law' && pull.within !== null ? sureInWords(pull.within) : null;
  if (exact === null) return sure === null ? [] : [`pull ${sure}`];
  return [`${exact}${sure === null ? '' : `, ${sure}`}`];
}

/** Whether all bends have the same centreline radius to what is shown: then it stands once, with the die. */
export const oneRadius = ({ bends }: SolvedTube): boolean =>
  bends.every(({ radius }) => Math.abs(radius - bends[0]!.radius) < 0.005);
