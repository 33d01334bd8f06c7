/** quote.pdf: the customer's page. What is in each group, and what it comes to with overhead and margin; no rate of the shop stands on it. */
import type { Derived } from '../../core/derive.ts';
import { QUOTE_GROUPS, reckonQuote, type QuoteLine, type Reckoned } from '../../core/quote/reckon.ts';
import type { PlanOf } from '../../core/quote/sticks.ts';
import {
  GROUP_NAMES,
  lineInWords,
  moneyInWords,
  quantityInWords,
  QUOTE,
  QUOTE_IS,
  TAX_IS,
  withoutInWords,
} from '../../core/words/quote.ts';
import { FIRM, stroke, text } from '../../drawing/ink.ts';
import type { Going } from '../../drawing/going.ts';
import type { Fonts } from '../../drawing/lettering.ts';
import type { ExportFile, PrintSettings } from '../shared/files.ts';
import type { Context } from '../sheets/context.ts';
import { gap, part, stacked, type Block, type Part } from '../sheets/page.ts';
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
    parts: (context) => customerParts(context, reckonQuote(derived, plans)),
  });

const COLUMNS: readonly Column[] = [
  { name: 'For', share: 0.2, bold: true },
  { name: 'In it', share: 0.6 },
  { name: 'Price', share: 0.2, figures: true },
];

function customerParts(context: Context, reckoned: Reckoned): readonly Part[] {
  const { job } = context.derived;
  const { heading, customer, terms, rates } = job.quote ?? {};
  const rows = QUOTE_GROUPS.flatMap((group) => {
    const sum = reckoned.groups.find((each) => each.group === group);
    const own = reckoned.lines.filter((line) => line.group === group && line.amount !== null);
    if (sum === undefined || own.length === 0) return [];
    return [
      [GROUP_NAMES[group], own.map((line) => contentOf(context, line)).join('; '), moneyInWords(sum.price, rates)],
    ];
  });
  const without = withoutInWords(reckoned, job);
  return [
    ...blocks([...ownWords(context, heading, 4), ...ownWords(context, customer)]),
    said(context, QUOTE_IS),
    ...(rows.length === 0 ? [] : [table(context, COLUMNS, rows)]),
    part(totalled(context, moneyInWords(reckoned.whole.price, rates))),
    said(context, ...(without === null ? [] : [without]), TAX_IS),
    ...blocks(ownWords(context, terms)),
  ];
}

const contentOf = ({ derived }: Context, line: QuoteLine): string => {
  const { name } = lineInWords(line.of, derived.job);
  return line.by === 'typed' ? name : `${name}: ${quantityInWords(line)}`;
};

const blocks = (lines: readonly Block[]): readonly Part[] =>
  lines.length === 0 ? [] : [part(stacked(gap(2), ...lines))];

const SIZE = 4.6;

/** "Total", and what all comes to, under a line. */
const totalled = ({ width }: Context, sum: string): Block => ({
  height: 10,
  draw: (left, top) => [
    stroke(
      [
        { x: left, y: top - 1 },
        { x: left + width, y: top - 1 },
      ],
      FIRM,
    ),
    text(left, top - 6.4, 'Total', { size: SIZE, bold: true }),
    text(left + width - 3, top - 6.4, sum, { size: SIZE, bold: true, anchor: 'end' }),
  ],
});
