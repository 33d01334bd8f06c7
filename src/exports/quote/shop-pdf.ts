/** quote-shop.pdf: the shop's page. How each line came, how overhead and margin are put on it, and boxes for what it really took. */
import type { Derived } from '../../core/derive.ts';
import { reckonQuote, type QuoteLine, type Reckoned } from '../../core/quote/reckon.ts';
import type { PlanOf } from '../../core/quote/sticks.ts';
import {
  GROUP_NAMES,
  hoursInWords,
  howInWords,
  lineInWords,
  moneyInWords,
  onTopInWords,
  QUOTE_IS,
  ROUNDED_IS,
  SHOP_QUOTE,
  stillCheaperInWords,
  tookInWords,
  totalRows,
  unpricedInWords,
  withoutInWords,
} from '../../core/words/quote.ts';
import type { Going } from '../../drawing/going.ts';
import type { Fonts } from '../../drawing/lettering.ts';
import type { ExportFile, PrintSettings } from '../shared/files.ts';
import type { Context } from '../sheets/context.ts';
import type { Part } from '../sheets/page.ts';
import { opened, said } from '../sheets/parts.ts';
import { table, type Column } from '../sheets/table.ts';
import { paperPdf } from './paper.ts';

/** `plans` are those that there are. */
export const shopPdf = (
  derived: Derived,
  plans: readonly PlanOf[],
  fonts: Fonts,
  settings: PrintSettings,
  going: Going,
): Promise<ExportFile> =>
  paperPdf(derived, fonts, settings, going, {
    fileName: 'quote-shop.pdf',
    title: SHOP_QUOTE,
    parts: (context) => shopParts(context, reckonQuote(derived, plans), plans),
  });

const LINES: readonly Column[] = [
  { name: 'Line', share: 0.2, bold: true },
  { name: 'How it came', share: 0.39 },
  { name: 'Comes to', share: 0.15, figures: true },
  { name: 'Took, h', share: 0.13, room: true },
  { name: 'Paid', share: 0.13, room: true },
];

const SUMS: readonly Column[] = [
  { name: 'Group', share: 0.28, bold: true },
  { name: 'Lines', share: 0.18, figures: true },
  { name: 'Overhead', share: 0.18, figures: true },
  { name: 'Margin', share: 0.18, figures: true },
  { name: 'Price', share: 0.18, figures: true },
];

function shopParts(context: Context, reckoned: Reckoned, plans: readonly PlanOf[]): readonly Part[] {
  const { job } = context.derived;
  const { lines, groups, whole, hours, took, stray } = reckoned;
  const rates = job.quote?.rates;
  const without = withoutInWords(reckoned, job);
  const cheaper = stillCheaperInWords(plans);
  const notes = [...lines.flatMap((line) => line.took.entries), ...stray].map((entry) =>
    tookInWords(entry, lines, job),
  );
  const sums = [...groups.map((sum) => ({ name: GROUP_NAMES[sum.group], sum })), { name: 'All', sum: whole }];
  return [
    said(context, QUOTE_IS, ROUNDED_IS),
    table(
      context,
      LINES,
      lines.map((line) => rowOf(context, line)),
    ),
    said(
      context,
      `Work in these lines: ${hoursInWords(hours)}. Noted so far: ${hoursInWords(took.hours)}, paid ${moneyInWords(took.paid, rates)}.`,
      ...(without === null ? [] : [without]),
      ...(cheaper === null ? [] : [cheaper]),
    ),
    opened(
      context,
      'As the customer has it',
      [onTopInWords(rates)],
      table(
        context,
        SUMS,
        sums.map(({ name, sum }) => [
          name,
          ...[sum.amount, sum.overhead, sum.margin, sum.price].map((amount) => moneyInWords(amount, rates)),
        ]),
      ),
    ),
    ...(reckoned.tax === null
      ? []
      : [
          said(
            context,
            ...totalRows(whole.price, reckoned.tax, reckoned.toPay).map(
              ([name, amount]) => `${name}: ${moneyInWords(amount, rates)}.`,
            ),
          ),
        ]),
    ...(notes.length === 0 ? [] : [said(context, ...notes)]),
  ];
}

function rowOf({ derived: { job } }: Context, line: QuoteLine): readonly string[] {
  const rates = job.quote?.rates;
  const { name, counts } = lineInWords(line.of, job);
  const { hours, paid } = line.took;
  return [
    name,
    `${howInWords(line, rates)}. ${counts}`,
    line.amount === null ? unpricedInWords(line) : moneyInWords(line.amount, rates),
    hours === null ? '' : hours.toFixed(2),
    paid === null ? '' : paid.toFixed(2),
  ];
}
