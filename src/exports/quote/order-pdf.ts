/** order.pdf: what is to be got for the job, with prices where the shop has given some. */
import type { Derived } from '../../core/derive.ts';
import { orderList, type OrderList } from '../../core/quote/order.ts';
import type { PlanOf } from '../../core/quote/sticks.ts';
import { orderInWords } from '../../core/words/order.ts';
import {
  NOTHING_TO_GET,
  ORDER,
  ORDER_COLUMNS,
  orderTotalInWords,
  stillCheaperInWords,
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
export const orderPdf = (
  derived: Derived,
  plans: readonly PlanOf[],
  fonts: Fonts,
  settings: PrintSettings,
  going: Going,
): Promise<ExportFile> =>
  paperPdf(derived, fonts, settings, going, {
    fileName: 'order.pdf',
    title: ORDER,
    parts: (context) => orderParts(context, orderList(derived, plans), plans),
  });

const COLUMNS: readonly Column[] = [
  { name: ORDER_COLUMNS[0], share: 0.42, bold: true },
  { name: ORDER_COLUMNS[1], share: 0.3 },
  { name: ORDER_COLUMNS[2], share: 0.14, figures: true },
  { name: ORDER_COLUMNS[3], share: 0.14, figures: true },
];

function orderParts(context: Context, list: OrderList, plans: readonly PlanOf[]): readonly Part[] {
  const { derived } = context;
  const parts = orderInWords(list, derived).map(({ title, note, rows }) =>
    opened(context, title, note === null ? [] : [note], table(context, COLUMNS, rows)),
  );
  if (parts.length === 0) return [said(context, NOTHING_TO_GET)];
  const cheaper = stillCheaperInWords(plans);
  return [...parts, said(context, orderTotalInWords(list, derived.job), ...(cheaper === null ? [] : [cheaper]))];
}
