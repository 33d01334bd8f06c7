/** The paper for the saw: stick by stick in the order of sawing, the stick to scale, a box to tick for each part, and what becomes of the rest. */
import { batchOf, type Stick } from '../../core/job/kinds/stick.ts';
import { isKept } from '../../core/stock/kept.ts';
import { shownName } from '../../core/job/shown.ts';
import { jobRevision } from '../../core/solve/revision.ts';
import { lastCut } from '../../core/stock/last-cut.ts';
import { stickNumbers } from '../../core/stock/saw-order.ts';
import type { SectionPlan } from '../../core/stock/of-job.ts';
import { sawingOf } from '../../core/stock/to-cut.ts';
import type { CutStick } from '../../core/stock/types.ts';
import {
  lastCutInWords,
  leastInWords,
  leftInWords,
  partInWords,
  sawingInWords,
  stickInWords,
  wantingInWords,
} from '../../core/words/stock.ts';
import { lengthFigure } from '../../drawing/figures.ts';
import { shrunk } from '../../drawing/fit.ts';
import { box, FINE, HAIR, LENGTH, PLAIN, stroke, text } from '../../drawing/ink.ts';
import { stickDrawing } from '../../drawing/stick.ts';
import type { Mark, Sheet } from '../../drawing/types.ts';
import { foot, NO_TUBE } from './cautions.ts';
import type { Context } from './context.ts';
import { contentHeight, drawn, fillPages, gap, paragraph, part, stacked, type Block, type Part } from './page.ts';

const TITLE = 'Cut list';
const HEAD = { size: 4.6, bold: true, after: 1.5 } as const;
const ROW = 7.4;
const TICK = 5;
/** Where a row's tube number, its name and the right edge of its length stand, mm. */
const [NUMBER, NAME, END] = [16, 20, 132];

export function cutListSheets(context: Context, plans: readonly SectionPlan[]): Sheet[] {
  const { derived, letters, paper, unit, width } = context;
  const numbers = stickNumbers(plans, derived.job);
  const heading = paragraph(letters, `${TITLE}: ${derived.job.name}`, width, { ...HEAD, most: 1, after: 2.5 });
  const sentences =
    derived.tubes.length === 0
      ? [NO_TUBE]
      : plans.length === 0
        ? ['Nothing is left to cut.']
        : [sawingInWords(sawingOf(derived.job), unit)];
  return fillPages(
    paper,
    TITLE,
    [
      part(heading, ...sentences.map((words) => paragraph(letters, words, width, { size: PLAIN, after: 1.4 }))),
      ...plans.flatMap((plan, i) =>
        sectionParts(context, plan, { longest: longestOf(context, plans), numbers: numbers[i]! }),
      ),
    ],
    heading,
    foot(context, TITLE, jobRevision(derived)),
  );
}

const sortOf = ({ derived }: Context, { stick }: CutStick): Stick =>
  derived.job.stickSorts.find(({ id }) => id === stick)!;

/** mm: the longest stick of all fills the width, so that any two can be compared. */
const longestOf = (context: Context, plans: readonly SectionPlan[]): number =>
  Math.max(1, ...plans.flatMap(({ plan }) => plan.sticks.map((stick) => sortOf(context, stick).length)));

interface Laid {
  /** mm of stick over the whole width. */
  readonly longest: number;
  /** Of the sticks of the section. */
  readonly numbers: readonly number[];
}

function sectionParts(context: Context, { section, sticks, plan, wanting }: SectionPlan, laid: Laid): readonly Part[] {
  const { derived, letters, width, unit } = context;
  const name = shownName(derived.job.sections.find(({ id }) => id === section)!.name);
  const listed = derived.job.stickSorts.filter((stick) => stick.section === section);
  const sentences = [
    ...(plan.sticks.length > 0 && plan.unplaced.length === 0 ? [leastInWords(plan, listed)] : []),
    ...wanting.map((each) =>
      wantingInWords(each, { sticks, name }, (id) => derived.byId.get(id)?.number ?? null, unit),
    ),
  ];
  const opening = stacked(
    gap(3),
    paragraph(letters, `${name}: ${plan.sticks.length === 1 ? '1 stick' : `${plan.sticks.length} sticks`}`, width, {
      ...HEAD,
      size: 5,
      most: 1,
    }),
    ...sentences.map((words) => paragraph(letters, words, width, { after: 1.2 })),
  );
  const [first, ...others] = plan.sticks.map((stick, i) => stickPart(context, stick, laid.numbers[i]!, laid.longest));
  return first === undefined ? [part(opening)] : [{ ...first, opening }, ...others];
}

/** A stick and its rows; its heading stands over them again where they go on to another page. */
function stickPart(context: Context, stick: CutStick, number: number, longest: number): Part {
  const { derived, letters, unit, width } = context;
  const sort = sortOf(context, stick);
  const kept = isKept(derived.job, stick.left);
  const parts = stick.parts.map(({ id, spare, length }) => ({
    name: spare === null ? String(derived.byId.get(id)!.number) : 'S',
    length,
  }));
  const picture = stickDrawing(
    letters,
    { ...sawingOf(derived.job), length: sort.length, parts, left: stick.left, isKept: kept },
    { longest, width, unit },
  );
  const rows = stick.parts.map((each, i) =>
    row(context, parts[i]!.name, partInWords(each, derived.byId), lengthFigure(each.length, unit)),
  );
  const [firstRow, ...others] = rows as [Block, ...Block[]];
  const drawnRow = stacked(drawn(picture), gap(1), firstRow);
  const batch = batchOf(sort);
  const mark = kept && batch !== null ? `: write batch ${shownName(batch)} on it` : '';
  const atLast = lastCutInWords(lastCut(sort.length, stick.parts, sawingOf(derived.job)), unit);
  const name = shownName(derived.job.sections.find(({ id }) => id === sort.section)!.name);
  const heading = stacked(
    gap(3),
    paragraph(letters, `Stick ${number}: ${name}, ${stickInWords(sort, unit)}`, width, { ...HEAD, most: 1 }),
  );
  const rest = stacked(
    paragraph(letters, `${leftInWords(stick.left, kept, unit)}${mark}.`, width, { after: 2 }),
    ...(atLast === null ? [] : [paragraph(letters, atLast, width, { after: 2 })]),
  );
  const whole = stacked(drawnRow, ...others, gap(1), rest);
  // A stick stays on one page, where that holds it: read over a page's end it looks like two.
  const isOne = whole.height < MOST_OF_A_PAGE * contentHeight(context.paper);
  return { heading, rows: isOne ? [whole] : [drawnRow, ...others, stacked(gap(1), rest)] };
}

const MOST_OF_A_PAGE = 0.8;

/** A box to tick, the tube's number, its name, and the length large. */
function row({ letters, width }: Context, number: string, name: string, length: string): Block {
  const middle = ROW / 2 + 1.4;
  return {
    height: ROW,
    draw: (left, top): readonly Mark[] => [
      box(left, top - (ROW - TICK) / 2, TICK, TICK, FINE),
      text(left + NUMBER, top - middle, number, { size: PLAIN, bold: true, anchor: 'end' }),
      ...[shrunk(letters, name, END - NAME - 34, PLAIN)].map((shown) =>
        text(left + NAME, top - middle, shown.text, { size: shown.size }),
      ),
      text(left + END, top - middle, length, { size: LENGTH, bold: true, anchor: 'end' }),
      stroke(
        [
          { x: left, y: top - ROW },
          { x: left + width, y: top - ROW },
        ],
        HAIR,
      ),
    ],
  };
}
