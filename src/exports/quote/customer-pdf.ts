/** quote.pdf: the customer's page. Who it is from, its number, day and how long it holds, what is made, and what that comes to with all that is put on; how the shop reckons does not stand on it. */
import type { Derived } from '../../core/derive.ts';
import { amountsOf } from '../../core/quote/amounts.ts';
import { QUOTE_GROUPS, reckonQuote, type Reckoned } from '../../core/quote/reckon.ts';
import type { PlanOf } from '../../core/quote/sticks.ts';
import {
  CUSTOMER_GROUPS,
  lineInWords,
  madeInWords,
  moneyInWords,
  QUOTE,
  QUOTE_IS,
  shownLine,
  taxInWords,
  totalRows,
  withoutInWords,
} from '../../core/words/quote.ts';
import { FIRM, PLAIN, stroke, text } from '../../drawing/ink.ts';
import type { Going } from '../../drawing/going.ts';
import type { Fonts } from '../../drawing/lettering.ts';
import type { ExportFile, PrintSettings } from '../shared/files.ts';
import type { Context } from '../sheets/context.ts';
import { gap, paragraph, part, stacked, type Block, type Part } from '../sheets/page.ts';
import { said } from '../sheets/parts.ts';
import { table, type Column } from '../sheets/table.ts';
import { ownWords, paperPdf } from './paper.ts';

/** `plans` are those that there are. */
export const customerPdf = (
  derived: Derived,
  plans: readonly PlanOf[],
  fonts: Fonts,
  settings: PrintSettings,
  going: Going,
): Promise<ExportFile> =>
  paperPdf(derived, fonts, settings, going, {
    fileName: 'quote.pdf',
    title: QUOTE,
    from: derived.job.quote?.heading,
    hasOwnDay: true,
    parts: (context) => customerParts(context, reckonQuote(derived, plans)),
  });

const COLUMNS: readonly Column[] = [
  { name: 'For', share: 0.24, bold: true },
  { name: 'What is made', share: 0.56 },
  { name: 'Price', share: 0.2, figures: true },
];

function customerParts(context: Context, reckoned: Reckoned): readonly Part[] {
  const { frame, job } = { frame: context.derived, job: context.derived.job };
  const { customer, number, validUntil, terms, rates } = job.quote ?? {};
  const rows = QUOTE_GROUPS.flatMap((group): readonly (readonly string[])[] => {
    const sum = reckoned.groups.find((each) => each.group === group);
    const own = reckoned.lines.filter((line) => line.group === group && line.amount !== null);
    if (sum === undefined || own.length === 0) return [];
    // What is charged beside has a name and a price of its own.
    if (group === 'extras')
      return own.map((line) => [lineInWords(line.of, job).name, '', moneyInWords(line.amount!, rates)]);
    return [[CUSTOMER_GROUPS[group], madeInWords(group, amountsOf(frame), own), moneyInWords(sum.price, rates)]];
  });
  const without = withoutInWords(reckoned, job);
  const facts = [
    ...(number === undefined ? [] : [`Number: ${shownLine(number)}`]),
    ...(context.day === undefined ? [] : [`Date: ${context.day}`]),
    ...(validUntil === undefined ? [] : [`Valid until: ${shownLine(validUntil)}`]),
  ];
  return [
    ...blocks(facts.map((words) => paragraph(context.letters, words, context.width, { after: 0.8 }))),
    ...blocks(ownWords(context, customer)),
    ...(rows.length === 0 ? [] : [table(context, COLUMNS, rows)]),
    part(
      ...totalRows(reckoned.whole.price, reckoned.tax, reckoned.toPay).map(([name, amount], i, all) =>
        totalled(context, name, moneyInWords(amount, rates), i === all.length - 1),
      ),
    ),
    said(
      context,
      ...(without === null ? [] : [without]),
      ...(reckoned.tax === null ? [taxInWords(rates)] : []),
      QUOTE_IS,
    ),
    ...blocks(ownWords(context, terms)),
  ];
}

const blocks = (lines: readonly Block[]): readonly Part[] =>
  lines.length === 0 ? [] : [part(stacked(gap(2), ...lines))];

const SIZE = 4.6;

/** What all comes to; the last, under a line, is what is to be paid. */
const totalled = ({ width }: Context, name: string, sum: string, isLast: boolean): Block => ({
  height: isLast ? 10 : 7,
  draw: (left, top) => [
    ...(isLast
      ? [
          stroke(
            [
              { x: left, y: top - 1 },
              { x: left + width, y: top - 1 },
            ],
            FIRM,
          ),
        ]
      : []),
    text(left, top - (isLast ? 6.4 : 5), name, { size: isLast ? SIZE : PLAIN, bold: isLast }),
    text(left + width - 3, top - (isLast ? 6.4 : 5), sum, { size: isLast ? SIZE : PLAIN, bold: isLast, anchor: 'end' }),
  ],
});
