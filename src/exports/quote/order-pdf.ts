/** order.pdf: what is to be got for the job, with prices where the shop has given some. */
import type { Derived } from '../../core/derive.ts';
import { extentOf } from '../../core/gusset/edges.ts';
import { gussetsOf, isMade } from '../../core/gusset/gussets.ts';
import type { Bought } from '../../core/quote/bought.ts';
import { orderList, type OrderList } from '../../core/quote/order.ts';
import type { PlanOf } from '../../core/quote/sticks.ts';
import { formatLength } from '../../core/units/length.ts';
import { areaInWords, sizeInWords } from '../../core/words/feet.ts';
import {
  lineInWords,
  moneyInWords,
  NO_PRICE,
  ORDER,
  orderTotalInWords,
  quantityInWords,
  rateInWords,
  sticksInWords,
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
    parts: (context) => orderParts(context, orderList(derived, plans)),
  });

const COLUMNS: readonly Column[] = [
  { name: 'What', share: 0.42, bold: true },
  { name: 'How much', share: 0.3 },
  { name: 'At', share: 0.14, figures: true },
  { name: 'Comes to', share: 0.14, figures: true },
];

function orderParts(context: Context, list: OrderList): readonly Part[] {
  const { derived } = context;
  const { job } = derived;
  const listed = (title: string, rows: readonly (readonly string[])[], note: readonly string[] = []) =>
    rows.length === 0 ? [] : [opened(context, title, note, table(context, COLUMNS, rows))];
  const parts = [
    ...listed('Tube', tubeRows(context, list)),
    ...listed('Plates and boxes', feetRows(context, list), sheetInWords(context, list.footSheet)),
    ...listed('Gussets', gussetRows(context, list)),
    ...listed('Bolts and padding', otherRows(context, list)),
    ...listed('Hole saws', sawRows(context, list)),
  ];
  const total = orderTotalInWords(list, job);
  return parts.length === 0 ? [said(context, 'There is nothing to get.')] : [...parts, said(context, total)];
}

const shown = ({ unit }: Context, mm: number): string => `${formatLength(mm, unit).text} ${unit}`;

const money = ({ derived }: Context, amount: number | null): string =>
  amount === null ? NO_PRICE : moneyInWords(amount, derived.job.quote?.rates);

/** The row of what is sold by the measure. */
const soldRow = (context: Context, name: string, bought: Bought | null): readonly (readonly string[])[] =>
  bought === null
    ? []
    : [
        [
          name,
          quantityInWords(bought),
          bought.each === null ? '' : rateInWords(bought.each),
          money(context, bought.cost),
        ],
      ];

function tubeRows(context: Context, { sticks, fromRack, wanted, unplanned }: OrderList) {
  const { job } = context.derived;
  return [
    ...sticks.map(({ stick, count, cost }) => [
      sticksInWords(stick, job),
      `${count}`,
      stick.cost === undefined ? '' : rateInWords(stick.cost),
      money(context, cost),
    ]),
    ...wanted.map(({ section, length, count, batch }) => [
      `${sticksInWords({ section, length, ...(batch !== null && { batch }) }, job)}, or longer`,
      `${count}: the plan has no stick for some parts`,
      '',
      NO_PRICE,
    ]),
    ...unplanned.map(({ section, length }) => [
      lineInWords({ kind: 'unplanned', section, length }, job).name,
      `${shown(context, length)} end to end; no sticks are listed yet`,
      '',
      NO_PRICE,
    ]),
    ...fromRack.map(({ stick, count }) => [
      sticksInWords(stick, job),
      `${count}, from the rack: nothing to buy`,
      '',
      '',
    ]),
  ];
}

const FOOT_NAMES = { plate: ['plate', 'plates'], box: ['box', 'boxes'] } as const;

const feetRows = (context: Context, { feet, bought }: OrderList) => [
  ...feet.map(({ foot, count }) => [
    foot.name,
    `${count} ${FOOT_NAMES[foot.kind][count === 1 ? 0 : 1]}, ${sizeInWords(foot.size, context.unit)}, ${shown(context, foot.thickness)} thick${
      foot.kind === 'box' ? `, ${shown(context, foot.height)} high` : ''
    }`,
    '',
    '',
  ]),
  ...soldRow(context, 'Steel for all of them', bought.footSteel),
];

const sheetInWords = (context: Context, sheet: OrderList['footSheet']): readonly string[] => [
  `Sheet, as cut and without what is cut away: ${sheet
    .map(({ thickness, area }) => `${areaInWords(area, context.unit)} of ${shown(context, thickness)}`)
    .join(', ')}.`,
];

function gussetRows(context: Context, { gussets, bought }: OrderList) {
  const sets = gussetsOf(context.derived);
  const rows = gussets.map(({ gusset, count, area }) => {
    const { made } = sets.find((set) => set.gusset === gusset && isMade(set.made))!;
    const [x, y] = isMade(made) ? extentOf(made.sheet.edges) : [[0, 0] as const, [0, 0] as const];
    const size = sizeInWords([x[1] - x[0], y[1] - y[0]], context.unit);
    return [
      gusset.name,
      `${count} out of ${size}, ${shown(context, gusset.thickness)} thick, ${areaInWords(area, context.unit)} each`,
      '',
      '',
    ];
  });
  return [...rows, ...soldRow(context, 'Sheet for all of them', bought.gussetSteel)];
}

const otherRows = (context: Context, { bolts, bought }: OrderList) => [
  ...bolts.map(({ hole, count }) => [`Bolts for holes of ${shown(context, hole)}`, `${count}`, '', '']),
  ...soldRow(context, 'All bolts, with nuts and washers', bought.bolts),
  ...soldRow(context, 'Padding, along the tubes', bought.padding),
];

const sawRows = (context: Context, { saws }: OrderList) =>
  saws.map(({ diameter, cuts, isThere }) => [
    `Hole saw, ${shown(context, diameter)}`,
    `for ${cuts} ${cuts === 1 ? 'cut' : 'cuts'}`,
    '',
    isThere ? 'is there' : 'to get',
  ]);
