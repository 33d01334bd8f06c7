/** One tube's sheet: all that is needed at the saw, the bender and the notcher, with nothing to look up elsewhere. */
import { cutOnCarInWords } from '../../core/words/ends.ts';
import { massInWords } from '../../core/units/mass.ts';
import { AS_DRAWN, CUT_TO } from '../../core/words/blank.ts';
import { MAKE_ONE_OF_EACH, twinIs } from '../../core/words/twins.ts';
import { SAW_GRABS, STRIP, TUBE_WHIPS } from '../../core/words/cautions.ts';
import { errorsOf, faultInWords } from '../../core/checks/faults.ts';
import type { Finding } from '../../core/checks/types.ts';
import type { Derived } from '../../core/derive.ts';
import { findingsOf, signedFinding, sourcedFinding } from './findings.ts';
import { sawMarks } from '../../core/marks/tape.ts';
import { tapeReading } from '../../core/units/tape.ts';
import { sectionInWords } from '../../core/job/sizes.ts';
import { primed } from '../../core/job/reference.ts';
import { steelInWords } from '../../core/springback/steels.ts';
import { atBender } from '../../core/run/run.ts';
import { revisionOf } from '../../core/solve/revision.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { shrunk, wrapped } from '../../drawing/fit.ts';
import type { Mark, Sheet } from '../../drawing/types.ts';
import { bendParts, oneRadius } from './bends.ts';
import type { Context } from './context.ts';
import { endsPart } from './ends.ts';
import { decimalFigure, lengthFigure, markFigure } from '../../drawing/figures.ts';
import { box, disc, FIRM, MAIN, PLAIN, SMALL, stroke, text } from '../../drawing/ink.ts';
import { checksPart, lengthCells, lengthLine } from './lengths.ts';
import { locator, type Lies } from './locator.ts';
import { blankDrawing } from '../../drawing/blank/blank.ts';
import type { Measured } from '../../drawing/blank/measured.ts';
import { measured } from './measured.ts';
import {
  abreast,
  drawn,
  contentHeight,
  fillPages,
  gap,
  heightOf,
  paragraph,
  part,
  stacked,
  type Block,
  type Part,
} from './page.ts';
import { tubeFoot } from './tube-foot.ts';

/** Of where it is in the car: a straight tube's head is lower, two of them share a page. */
const pictureOf = (tube: SolvedTube) => (isBent(tube) ? { width: 64, height: 41 } : { width: 52, height: 28 });
const AT_NOTCHER = `${SAW_GRABS} ${STRIP}`;
const AT_BENDER_TOO = `${SAW_GRABS} ${TUBE_WHIPS} ${STRIP}`;

const OF_ORDER: ReadonlySet<string> = new Set(['bend/order-matters', 'bend/no-free-order', 'bend/plain-order-touches']);

interface LaidOut {
  readonly tube: SolvedTube;
  readonly parts: readonly Part[];
}

/**
 * A step a tube, each with the sheets that are whole by then: two straight tubes that come one after the other stand on one where both
 * fit, so a straight one waits for the next.
 */
export function tubeSheets(context: Context, views: readonly Lies[]): readonly (() => Sheet[])[] {
  const { tubes } = context.derived;
  let waiting: LaidOut | null = null;
  return tubes.map((tube, i) => () => {
    const next = { tube, parts: tubeParts(context, views, tube) };
    const before = waiting;
    waiting = null;
    const shared = before === null ? null : sharedSheets(context, before, next);
    if (shared !== null) return shared;
    const whole = before === null ? [] : ownSheets(context, before);
    if (isBent(tube) || i === tubes.length - 1) return [...whole, ...ownSheets(context, next)];
    waiting = next;
    return whole;
  });
}

const isBent = ({ bends }: SolvedTube): boolean => bends.length > 0;

function ownSheets(context: Context, { tube, parts }: LaidOut): Sheet[] {
  const { paper, derived } = context;
  return fillPages(
    paper,
    `Tube ${tube.number}`,
    parts,
    again(context, tube),
    tubeFoot(
      context,
      [tube],
      `Tube ${placeName(tube, derived)}`,
      revisionOf(derived.job, tube),
      isBent(tube) ? AT_BENDER_TOO : AT_NOTCHER,
    ),
  );
}

/** Both on one; null where they do not go on it. */
function sharedSheets(context: Context, one: LaidOut, other: LaidOut): Sheet[] | null {
  const { paper, derived } = context;
  if (isBent(other.tube)) return null;
  const both = [one.tube, other.tube];
  const parts = [...one.parts, part(between(context)), ...other.parts];
  const codes = both.map((tube) => `${tube.number} ${revisionOf(derived.job, tube)}`).join(', ');
  const places = both.map((tube) => placeName(tube, derived));
  const bottom = tubeFoot(context, both, `Tubes ${places.join(' and ')}`, codes, AT_NOTCHER);
  if (heightOf(parts) > contentHeight(paper) - bottom.height) return null;
  return fillPages(paper, `Tubes ${both.map(({ number }) => number).join(' and ')}`, parts, gap(0), bottom);
}

/** Where one tube ends and the next begins. */
const between = ({ width }: Context): Block => ({
  height: 3.6,
  draw: (left, top) => [
    stroke(
      [
        { x: left, y: top - 2 },
        { x: left + width, y: top - 2 },
      ],
      { ...FIRM, dash: [3, 2] },
    ),
  ],
});

function tubeParts(context: Context, views: readonly Lies[], tube: SolvedTube): readonly Part[] {
  const { derived, letters, width } = context;
  // What is bent, as it is drawn, and what is notched, as it stands.
  const plan = atBender(derived.job, tube);
  const marking = measured(plan, context);
  const shown = errorsOf(derived.findings, tube.id).slice(0, BESIDE);
  const findings = findingsOf(derived.findings, tube.id).filter((finding) => !shown.includes(finding));
  // What the order of bending runs into stands before the bends, unless an order is settled for this tube.
  const settled = marking.feed.orderFrom !== 'plain';
  const ofOrder = settled ? [] : findings.filter(({ id }) => OF_ORDER.has(id));
  const inWords = (finding: Finding, bold: boolean): Block =>
    paragraph(letters, signedFinding(finding, derived), width, { bold, after: 0.6 });
  return [
    part(head(context, views, tube, marking)),
    ...(isBent(tube) || sawMarks(marking.tape).length > 0
      ? [part(gap(1), drawn(blankDrawing(context.letters, plan, marking, context.unit, context.width)))]
      : []),
    ...(ofOrder.length === 0 ? [] : [part(...ofOrder.map((finding) => inWords(finding, true)))]),
    ...bendParts(context, plan, marking),
    endsPart(context, tube, marking.tape.steps),
    checksPart(context, tube),
    {
      heading: null,
      rows: findings.filter((finding) => !ofOrder.includes(finding)).map((finding) => inWords(finding, false)),
    },
  ];
}

/** The number with how many there are, so that a stack is known to be whole; and its place, where that is another. */
function placeName(tube: SolvedTube, { tubes }: Derived): string {
  const place = tubes.indexOf(tube) + 1;
  const ofAll = `${place} of ${tubes.length}`;
  return place === tube.number ? ofAll : `${tube.number}: ${ofAll} in build order`;
}

function head(context: Context, views: readonly Lies[], tube: SolvedTube, marking: Measured): Block {
  const { width } = context;
  const picture = pictureOf(tube);
  const space = width - picture.width - 3;
  return abreast(
    {
      left: 0,
      block: stacked(
        title(context, tube, space),
        ...facts(context, tube, marking, space),
        isBent(tube) ? lengthCells(context, tube, space) : lengthLine(context, tube, space),
      ),
    },
    { left: width - picture.width, block: locator(views, tube, picture.width, picture.height) },
  );
}

/** Number and name. */
function title({ letters }: Context, tube: SolvedTube, space: number): Block {
  const number = String(tube.number);
  const tag = Math.max(13, letters.width(number, 9, true) + 5);
  const room = space - tag - 3;
  // Somewhat smaller rather than on two lines.
  const size = [6.4, 5].find((each) => letters.width(tube.name, each, true) <= room) ?? 6.4;
  const lines = wrapped(letters, tube.name, room, size, true, 3);
  const height = Math.max(13, lines.length * 7.6 + 2);
  return {
    height: height + 1,
    draw: (left, top): Mark[] => [
      box(left, top, tag, 13, null, 0),
      text(left + tag / 2, top - 9.8, number, { size: 9, bold: true, anchor: 'middle', grey: 1 }),
      ...lines.map((line, i) =>
        text(left + tag + 3, top - (lines.length === 1 ? 8.8 : 6) - i * 7.6, line, { size, bold: true }),
      ),
    ],
  };
}

function facts(context: Context, tube: SolvedTube, { tape, feed }: Measured, space: number): Block[] {
  const { derived, letters, unit } = context;
  const { section, die, bends } = tube;
  const madeOf = (named: (name: string) => string): string =>
    [
      sectionInWords({ ...section, name: named(section.name) }, unit),
      ...(section.material === '' ? [] : [named(steelInWords(section))]),
      ...(die === null || bends.length === 0
        ? []
        : [`die ${named(die.name)}${oneRadius(tube) ? `, CLR ${decimalFigure(bends[0]!.radius, unit)}` : ''}`]),
      massInWords(tube.mass, unit),
    ].join(' · ');
  const whole = madeOf((name) => name);
  // Long names are cut short each by itself, so that size, radius and mass stay.
  const made =
    wrapped(letters, whole, space, SMALL).length <= FACT_LINES
      ? whole
      : madeOf((name) => shrunk(letters, name, space * 0.3, SMALL, false, SMALL).text);
  const errors = errorsOf(derived.findings, tube.id);
  const twin = derived.byId.get(primed(tube.id));
  const onCar = cutOnCarInWords(tube);
  const grip = sawMarks(tape).map(({ end, exact }) => {
    const at = `${markFigure(tapeReading(exact, unit, feed.fine))} ${unit}`;
    return `${lengthFigure(tape.grip[end === 'A' ? 0 : 1], unit)} at end ${end}, sawn off after bending at ${at} on the tape`;
  });
  return [
    paragraph(letters, made, space, { size: SMALL, most: FACT_LINES }),
    ...(errors.length === 0 ? [] : [notToBeCut(context, errors, space)]),
    blank(context, lengthFigure(tape.blank, unit), errors.length > 0, space),
    ...(grip.length === 0
      ? []
      : [
          paragraph(
            letters,
            `Finished blank ${lengthFigure(tube.blankLength, unit)}; the rest is grip for the clamp: ${grip.join('; ')}.`,
            space,
            { size: PLAIN },
          ),
        ]),
    ...(twin === undefined ? [] : [twinBlock(context, tube, twin, space)]),
    ...(onCar === null ? [] : [paragraph(letters, onCar, space, { size: PLAIN, bold: true })]),
  ];
}

/** In one line where there is room for it. */
function twinBlock({ letters }: Context, tube: SolvedTube, twin: SolvedTube, space: number): Block {
  const [what, which] = [MAKE_ONE_OF_EACH, `${twinIs(tube, twin)}: ${twin.number} ${twin.name}`];
  const right = letters.width(what, PLAIN, true) + 2;
  const bold = paragraph(letters, what, space, { size: PLAIN, bold: true, after: 0 });
  const plain = paragraph(letters, which, space, { most: 2 });
  if (right + letters.width(which, SMALL, false) > space) return stacked(bold, plain);
  return abreast({ left: 0, block: bold }, { left: right, block: plain });
}

function blank({ letters }: Context, length: string, off: boolean, space: number): Block {
  const label = off ? AS_DRAWN : CUT_TO;
  const wide = letters.width(label, PLAIN, false) + 4;
  const size = off ? MAIN : 9;
  const beside = wide + letters.width(length, size, true) <= space;
  return {
    height: beside ? 9.6 : 16,
    draw: (left, top) => [
      text(left, top - (beside ? 7 : 4), label, { size: PLAIN }),
      text(left + (beside ? wide : 0), top - (beside ? 7.6 : 12.5), length, { size, bold: true }),
    ],
  };
}

/** Lines for what the tube is made of and bent on. */
const FACT_LINES = 3;

/** So many errors are shown beside the tube's number, the others with the warnings. */
const BESIDE = 3;

/** White on black, with the reasons: nobody takes the sheet to the saw by mistake. */
function notToBeCut({ derived, letters }: Context, errors: readonly Finding[], space: number): Block {
  const fault = wrapped(letters, faultInWords(errors), space - 6, PLAIN, true);
  const reasons = [
    ...errors
      .slice(0, BESIDE)
      .flatMap((error) => wrapped(letters, sourcedFinding(error, derived), space - 6, SMALL, false, 6)),
    ...(errors.length > BESIDE ? [`and ${errors.length - BESIDE} more, further down`] : []),
  ];
  const height = 10 + fault.length * 5 + reasons.length * 4.3;
  return {
    height: height + 1.5,
    draw: (left, top) => [
      box(left, top, space, height, null, 0),
      text(left + 3, top - 6.6, '× NOT TO BE CUT', { size: 6, bold: true, grey: 1 }),
      ...fault.map((line, i) => text(left + 3, top - 11.8 - i * 5, line, { size: PLAIN, bold: true, grey: 1 })),
      ...reasons.map((line, i) => text(left + 3, top - 11.4 - fault.length * 5 - i * 4.3, line, { grey: 1 })),
    ],
  };
}

/** What heads a further sheet of the same tube. */
function again({ letters, width }: Context, tube: SolvedTube): Block {
  const centre = 5;
  const [line] = wrapped(letters, `${tube.name}, continued`, width - 14, PLAIN + 1, true, 1);
  return {
    height: 13,
    draw: (left, top) => [
      disc({ x: left + centre, y: top - centre }, centre, null, 0),
      text(left + centre, top - centre - 1.8, String(tube.number), {
        size: 4.8,
        bold: true,
        anchor: 'middle',
        grey: 1,
      }),
      text(left + 13, top - centre - 1.8, line!, { size: PLAIN + 1, bold: true }),
      stroke(
        [
          { x: left, y: top - 11.5 },
          { x: left + width, y: top - 11.5 },
        ],
        FIRM,
      ),
    ],
  };
}
