/** The order list in the words of the shop: on paper as on the screen. */
import { extentOf } from '../gusset/edges.ts';
import { gussetsOf, isMade } from '../gusset/gussets.ts';
import type { Bought } from '../quote/bought.ts';
import type { OrderList } from '../quote/order.ts';
import { formatLength } from '../units/length.ts';
import type { Frame } from '../solve/types.ts';
import { areaInWords, sizeInWords } from './feet.ts';
import { lineInWords, moneyInWords, NO_PRICE, quantityInWords, rateInWords, sticksInWords } from './quote.ts';

/** What, how much, at what each, and what it comes to; '' where there is nothing to say. */
export type OrderRow = readonly [what: string, much: string, each: string, cost: string];

export interface OrderPart {
  readonly title: string;
  readonly note: string | null;
  readonly rows: readonly OrderRow[];
}

/** Parts that have a row. */
export const orderInWords = (list: OrderList, frame: Frame): readonly OrderPart[] =>
  [
    { title: 'Tube', note: null, rows: tubeRows(frame, list) },
    { title: 'Plates and boxes', note: sheetInWords(frame, list), rows: feetRows(frame, list) },
    { title: 'Gussets', note: null, rows: gussetRows(frame, list) },
    { title: 'Bolts and padding', note: null, rows: otherRows(frame, list) },
    { title: 'Hole saws', note: null, rows: sawRows(frame, list) },
  ].filter(({ rows }) => rows.length > 0);

const shown = ({ job: { lengthUnit } }: Frame, mm: number): string =>
  `${formatLength(mm, lengthUnit).text} ${lengthUnit}`;

const money = ({ job }: Frame, amount: number | null): string =>
  amount === null ? NO_PRICE : moneyInWords(amount, job.quote?.rates);

/** The row of what is sold by the measure. */
const soldRow = (frame: Frame, name: string, bought: Bought | null): readonly OrderRow[] =>
  bought === null
    ? []
    : [
        [
          name,
          quantityInWords(bought),
          bought.each === null ? '' : rateInWords(bought.each),
          money(frame, bought.cost),
        ],
      ];

function tubeRows(frame: Frame, { sticks, fromRack, wanted, unplanned }: OrderList): readonly OrderRow[] {
  const { job } = frame;
  return [
    ...sticks.map(({ stick, count, cost }): OrderRow => [
      sticksInWords(stick, job),
      `${count}`,
      stick.cost === undefined ? '' : rateInWords(stick.cost),
      money(frame, cost),
    ]),
    ...wanted.map(({ section, length, count, batch }): OrderRow => [
      `${sticksInWords({ section, length, ...(batch !== null && { batch }) }, job)}, or longer`,
      `${count}: the plan has no stick for some parts`,
      '',
      NO_PRICE,
    ]),
    ...unplanned.map(({ section, length }): OrderRow => [
      lineInWords({ kind: 'unplanned', section, length }, job).name,
      `${shown(frame, length)} end to end; no sticks are listed yet`,
      '',
      NO_PRICE,
    ]),
    ...fromRack.map(({ stick, count, from }): OrderRow => [
      sticksInWords(stick, job),
      `${count}, ${from === 'left-over' ? 'left over of what was sawn' : 'from the rack'}: nothing to buy`,
      '',
      '',
    ]),
  ];
}

const FOOT_NAMES = { plate: ['plate', 'plates'], box: ['box', 'boxes'] } as const;

const feetRows = (frame: Frame, { feet, bought }: OrderList): readonly OrderRow[] => [
  ...feet.map(({ foot, count }): OrderRow => [
    foot.name,
    `${count} ${FOOT_NAMES[foot.kind][count === 1 ? 0 : 1]}, ${sizeInWords(foot.size, frame.job.lengthUnit)}, ${shown(frame, foot.thickness)} thick${
      foot.kind === 'box' ? `, ${shown(frame, foot.height)} high` : ''
    }`,
    '',
    '',
  ]),
  ...soldRow(frame, 'Steel for all of them', bought.footSteel),
];

const sheetInWords = (frame: Frame, { footSheet }: OrderList): string =>
  `Sheet, as cut and without what is cut away: ${footSheet
    .map(({ thickness, area }) => `${areaInWords(area, frame.job.lengthUnit)} of ${shown(frame, thickness)}`)
    .join(', ')}.`;

function gussetRows(frame: Frame, { gussets, bought }: OrderList): readonly OrderRow[] {
  const sets = gussetsOf(frame);
  const unit = frame.job.lengthUnit;
  const rows = gussets.flatMap(({ gusset, count, area }): readonly OrderRow[] => {
    const made = sets.flatMap((set) => (set.gusset === gusset && isMade(set.made) ? [set.made] : []))[0];
    if (made === undefined) return [];
    const [x, y] = extentOf(made.sheet.edges);
    const size = sizeInWords([x[1] - x[0], y[1] - y[0]], unit);
    return [
      [
        gusset.name,
        `${count} out of ${size}, ${shown(frame, gusset.thickness)} thick, ${areaInWords(area, unit)} each`,
        '',
        '',
      ],
    ];
  });
  return [...rows, ...soldRow(frame, 'Sheet for all of them', bought.gussetSteel)];
}

const otherRows = (frame: Frame, { bolts, bought }: OrderList): readonly OrderRow[] => [
  ...bolts.map(({ hole, count }): OrderRow => [`Bolts for holes of ${shown(frame, hole)}`, `${count}`, '', '']),
  ...soldRow(frame, 'All bolts, with nuts and washers', bought.bolts),
  ...soldRow(frame, 'Padding, along the tubes', bought.padding),
];

const sawRows = (frame: Frame, { saws, bought }: OrderList): readonly OrderRow[] => [
  ...saws.map(({ diameter, cuts, isThere }): OrderRow => [
    `Hole saw, ${shown(frame, diameter)}`,
    `for ${cuts} ${cuts === 1 ? 'cut' : 'cuts'}`,
    '',
    isThere ? 'is there' : 'to get',
  ]),
  ...soldRow(frame, 'All hole saws to get', bought.saws),
];
