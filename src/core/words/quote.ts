/** Order list and quote in the words of the shop: what each line is, what was counted, and how its amount came. */
import type { Took } from '../job/kinds/quote.ts';
import type { Rates, Tax, Timed } from '../job/kinds/rates.ts';
import type { RateName } from '../job/rate-names.ts';
import type { Stick } from '../job/kinds/stick.ts';
import { plainLine } from '../job/plain-line.ts';
import { shownName } from '../job/shown.ts';
import type { Job } from '../job/types.ts';
import type { Amounts } from '../quote/amounts.ts';
import type { OrderList } from '../quote/order.ts';
import type { LineOf, QuoteGroup, QuoteLine, Reckoned } from '../quote/reckon.ts';
import { heavyMeasure, longMeasure, type Measure } from '../quote/units.ts';
import { lineKey, type AlikeSticks, type PlanOf } from '../quote/sticks.ts';
import { isProven } from '../stock/types.ts';
import { capital, listed } from './lists.ts';
import { stickLengthInWords } from './rack.ts';
import type { LengthUnit } from '../units/length.ts';

export const ORDER = 'To order';
export const ORDER_COLUMNS = ['What', 'How much', 'At', 'Comes to'] as const;
export const NOTHING_TO_GET = 'There is nothing to get.';
export const STICKS_COMING = 'Working out which sticks…';
export const QUOTE = 'Quote';
export const SHOP_QUOTE = 'Quote, the shop’s own page';
export const ROUNDED_IS = 'Every figure is rounded to two decimals where it stands, and what follows goes by it.';
export const QUOTE_IS = 'Worked out from the drawing of this job. It is an estimate and no binding offer.';
export const NO_RATE = 'no rate yet';
export const NO_PRICE = 'no price yet';

/** A person's own words among ours: what would turn the figures beside them round is out. */
export const shownLine = (text: string): string => plainLine(shownName(text));

/** What stands in the place of an amount that nobody can give. */
export const unpricedInWords = ({ by }: Pick<QuoteLine, 'by'>): string => (by === 'time' ? NO_RATE : NO_PRICE);
/** Whether taxes are in a total. */
export const taxInWords = ({ tax }: Rates = {}): string =>
  tax === undefined
    ? 'Taxes are not in it, unless the shop has put them into its rates.'
    : `${taxNamed(tax)} is put on the whole price.`;

/** "VAT, 20 %". */
const taxNamed = ({ name, percent }: Tax): string =>
  `${shownLine(name) || 'Tax'}, ${Number(percent.toPrecision(10))} %`;

/** What a quote ends with: the total, and where a tax is reckoned that, and the total with it. */
export const totalRows = (
  price: number,
  tax: Reckoned['tax'],
  toPay: number,
): readonly (readonly [name: string, amount: number])[] =>
  tax === null
    ? [['Total', price]]
    : [
        ['Total without tax', price],
        [taxNamed(tax), tax.amount],
        ['Total', toPay],
      ];

/** Money as it is printed: two decimals, a sign before and a word behind. */
export function moneyInWords(amount: number, { currency = '' }: Pick<Rates, 'currency'> = {}): string {
  const figure = amount.toFixed(2);
  const word = shownLine(currency);
  if (word === '') return figure;
  return /^\p{Sc}$/u.test(word) ? `${word}${figure}` : `${figure} ${word}`;
}

/** A rate: with as many decimals as it was typed with, two at least. */
export const rateInWords = (rate: number): string => {
  const figure = `${Number(rate.toPrecision(10))}`;
  return /\.\d{2,}$/u.test(figure) ? figure : rate.toFixed(2);
};

/** Hours, with two decimals. */
export const hoursInWords = (hours: number): string => `${hours.toFixed(2)} h`;

/** "12", "10.47 m". */
export const quantityInWords = ({ quantity, measure }: Pick<QuoteLine, 'quantity' | 'measure'>): string =>
  measure === 'each' ? `${quantity}` : `${quantity.toFixed(2)} ${measure}`;

export const GROUP_NAMES: Readonly<Record<QuoteGroup, string>> = {
  material: 'Material',
  making: 'Making',
  feet: 'Feet and gussets',
  extras: 'Charged beside',
};

/** As a customer knows them: what the shop reckons by is not theirs. */
export const CUSTOMER_GROUPS: Readonly<Record<Exclude<QuoteGroup, 'extras'>, string>> = {
  material: 'Steel and parts',
  making: 'Work',
  feet: GROUP_NAMES.feet,
};

/** What a customer gets of a group, by what is there to be seen on the car; `lines` those of it that have a price. */
export function madeInWords(
  group: Exclude<QuoteGroup, 'extras'>,
  { tubes, bends, welds, feet, gussets }: Amounts,
  lines: readonly QuoteLine[],
): string {
  const has = (kind: LineOf['kind']): boolean => lines.some(({ of }) => of.kind === kind);
  const sum = (made: readonly { readonly count: number }[]): number => made.reduce((all, { count }) => all + count, 0);
  switch (group) {
    case 'material':
      return capital(listed(['tube', ...(has('bolts') ? ['bolts'] : []), ...(has('padding') ? ['padding'] : [])]));
    case 'making': {
      const work = ['cut', ...(bends > 0 ? ['bent'] : []), 'fitted', 'welded'];
      const joints = welds.tubes.joints + welds.feet.joints;
      return `${counted(tubes, 'tube')} ${listed(work)}: ${counted(bends, 'bend')}, ${counted(joints, 'welded joint')}`;
    }
    case 'feet':
      return capital(
        listed([
          ...(sum(feet) > 0 ? [counted(sum(feet), 'plate or box', 'plates and boxes')] : []),
          ...(sum(gussets) > 0 ? [counted(sum(gussets), 'gusset')] : []),
        ]),
      );
  }
}

const counted = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`;

interface Said {
  readonly name: string;
  /** What is counted. */
  readonly counts: string;
}

const TIMED: Readonly<Record<Timed, Said>> = {
  straightCut: { name: 'Sawing to length', counts: 'Tubes and spares, each cut once from its stick.' },
  cope: { name: 'Coping', counts: 'Cuts: one for each tube that an end is coped to.' },
  mitreCut: { name: 'Mitre cuts', counts: 'Ends cut to the plane of a mitre.' },
  footCut: { name: 'Cuts to feet', counts: 'Ends cut to a foot or a plate.' },
  bending: { name: 'Bending', counts: 'Bends.' },
  tubeFitting: { name: 'Fitting, by the tube', counts: 'Tubes.' },
  jointFitting: { name: 'Fitting, by the joint', counts: 'Joints, those on feet and plates among them.' },
  bendFitting: { name: 'Fitting, by the bend', counts: 'Bends, for a bent tube takes longer to fit.' },
  weldMetre: {
    name: 'Welding',
    counts:
      'Length of all joints: in space along the cut, on the outside of the tube. Seams of boxes and gussets are not in it, nor is what welds feet and plates to the car: that is in no line.',
  },
  footMaking: { name: 'Making feet', counts: 'Plates and boxes that ends stand on.' },
  gussetMaking: { name: 'Making gussets', counts: 'Gussets, mirror images among them, cut and welded in.' },
};

const namedSection = ({ sections }: Job, id: string): string =>
  shownLine(sections.find((section) => section.id === id)?.name ?? id);

/** "Whole sticks: 2 to be bought and 1 sawn already. What is left of those that were sawn costs no more." */
function alikeInWords({ bought, rack, sawn }: AlikeSticks): string {
  const parts = [
    ...(bought > 0 ? [`${bought} to be bought`] : []),
    ...(rack > 0 ? [`${rack} from the rack`] : []),
    ...(sawn > 0 ? [`${sawn} sawn already`] : []),
  ];
  return `Whole sticks: ${listed(parts)}.${sawn > 0 ? ' What is left of those that were sawn costs no more.' : ''}`;
}

/** "Sticks of 1 3/4 x .120, 20 ft, batch H-204". */
export function sticksInWords(
  { section, length, batch }: Pick<Stick, 'section' | 'length' | 'batch'>,
  job: Job,
): string {
  const heat = batch === undefined ? '' : `, batch ${shownLine(batch)}`;
  return `Sticks of ${namedSection(job, section)}, ${stickLengthInWords(length, job.lengthUnit)}${heat}`;
}

/** "Sticks of 1 3/4 x .120, 20 ft": what a line is, and what was counted for it. */
export function lineInWords(of: LineOf, job: Job): Said {
  switch (of.kind) {
    case 'sticks':
      return { name: sticksInWords(of.alike.like, job), counts: alikeInWords(of.alike) };
    case 'wanted':
      return {
        name: `Sticks of ${namedSection(job, of.section)}, ${stickLengthInWords(of.length, job.lengthUnit)}, still to get`,
        counts: 'The cutting plan has no stick for some parts: these would do.',
      };
    case 'unplanned':
      return {
        name: `Tube, ${namedSection(job, of.section)}`,
        counts: 'Tubes and spares laid end to end. The job has no sticks yet, so nobody can say how many that takes.',
      };
    case 'cut-already':
      return {
        name: 'Tubes that are cut already',
        counts: 'Nobody noted of which stick, and the cutting plan has none for them: note beside it what they took.',
      };
    case 'unmade':
      return { name: 'Gussets that cannot be made', counts: 'As they are drawn; Checks says why.' };
    case 'bolts':
      return { name: 'Bolts', counts: 'One for each hole in a foot, with nut and washers.' };
    case 'saws':
      return {
        name: 'Hole saws',
        counts: 'One as wide as each tube that others are coped to, of those the shop has not.',
      };
    case 'padding':
      return { name: 'Padding', counts: 'Along the tubes that a rule sheet wants padded.' };
    case 'footSteel':
      return {
        name: 'Steel for feet',
        counts: 'Plates and walls as they are cut, holes out; without what is cut away.',
      };
    case 'gussetSteel':
      return { name: 'Sheet for gussets', counts: 'Gussets as they are cut, flat; without what is cut away.' };
    case 'extra':
      return {
        name: shownLine(of.extra.what),
        counts: 'As the shop has typed it: no overhead and no margin is put on it.',
      };
    default:
      return TIMED[of.kind];
  }
}

/** "22 x 6 min = 2.20 h, at 68.00 an hour"; of what has no rate which is missing. */
export function howInWords(line: QuoteLine, { hourly }: Rates = {}): string {
  const count = quantityInWords(line);
  const { by, each, hours, measure } = line;
  if (by === 'typed') return 'as typed';
  if (by === 'unknown') return `${count}: ${NO_PRICE}`;
  const per = measure === 'each' ? 'each' : `a ${measure}`;
  if (each === null) return `${count}: ${unpricedInWords(line)}`;
  if (by === 'price') return `${count} × ${rateInWords(each)} ${per}`;
  const time = `${count} × ${minutesInWords(each)} ${per} = ${hoursInWords(hours!)}`;
  return hourly === undefined ? `${time}; an hour has ${NO_RATE}` : `${time}, at ${rateInWords(hourly)} an hour`;
}

const minutesInWords = (minutes: number): string => `${Number(minutes.toPrecision(6))} min`;

/** What is not in a total, for want of rates; null where all lines have theirs. */
export function withoutInWords({ unpriced }: Pick<Reckoned, 'unpriced'>, job: Job): string | null {
  if (unpriced.length === 0) return null;
  const names = unpriced.map(({ of }) => lineInWords(of, job).name);
  return `Not in this total, for want of a price or a rate: ${names.join('; ')}.`;
}

/** What an order comes to, and what is not in it. */
export function orderTotalInWords({ cost, unpriced }: Pick<OrderList, 'cost' | 'unpriced'>, { quote }: Job): string {
  const without = unpriced === 0 ? '' : ` ${unpriced} ${unpriced === 1 ? 'line has' : 'lines have'} ${NO_PRICE}.`;
  return `What has a price comes to ${moneyInWords(cost, quote?.rates)}.${without}`;
}

/** Beside a total: that a plan which it goes by is not proven; null where all are. */
export const stillCheaperInWords = (plans: readonly Pick<PlanOf, 'plan'>[]): string | null =>
  plans.every(({ plan }) => isProven(plan)) ? null : 'The plan may still get cheaper: see Cutting plan.';

/** What was noted of a line. */
export function tookInWords({ line, hours, paid, on, remark }: Took, lines: readonly QuoteLine[], job: Job): string {
  const of = lines.find(({ id }) => lineKey(id) === lineKey(line))?.of;
  const name = of === undefined ? `${shownLine(line)}, a line that is no more` : lineInWords(of, job).name;
  const parts = [
    ...(on === undefined || on === '' ? [] : [shownLine(on)]),
    ...(hours === undefined ? [] : [`took ${hoursInWords(hours)}`]),
    ...(paid === undefined ? [] : [`paid ${moneyInWords(paid, job.quote?.rates)}`]),
    ...(remark === undefined || remark === '' ? [] : [shownLine(remark)]),
  ];
  return `${name}: ${parts.join(', ')}.`;
}

/** How overhead and margin are put on, and on what they are not. */
export const onTopInWords = ({ overhead, margin }: Rates = {}): string => {
  const given = (share: number | undefined, of: string): string =>
    share === undefined ? 'not given' : `${share} percent of ${of}`;
  const shares = `Overhead is ${given(overhead, 'what the lines come to')}; margin is ${given(margin, 'that and overhead together')}.`;
  return `${shares} What is charged beside is left out of both.`;
};

/** What a rate is by: "min each", "a kg". */
export function rateUnit(name: RateName, unit: LengthUnit): { readonly label: string; readonly measure: Measure } {
  const [heavy, long] = [heavyMeasure(unit), longMeasure(unit)];
  switch (name) {
    case 'hourly':
      return { label: 'an hour', measure: 'each' };
    case 'overhead':
    case 'margin':
    case 'tax':
      return { label: '%', measure: 'each' };
    case 'footKilogram':
    case 'gussetKilogram':
      return { label: `a ${heavy}`, measure: heavy };
    case 'paddingMetre':
      return { label: `a ${long}`, measure: long };
    case 'boltEach':
    case 'sawEach':
      return { label: 'each', measure: 'each' };
    case 'weldMetre':
      return { label: `min a ${long}`, measure: long };
    default:
      return { label: 'min each', measure: 'each' };
  }
}

const OTHER_RATES = {
  hourly: { name: 'Work', counts: 'What an hour costs the customer before overhead and margin.' },
  overhead: { name: 'Overhead', counts: 'Put on what all lines come to, but for what is charged beside.' },
  margin: { name: 'Margin', counts: 'Put on the same and overhead together.' },
  footKilogram: { name: 'Steel for feet', counts: 'Plates and walls of boxes.' },
  gussetKilogram: { name: 'Sheet for gussets', counts: 'Flat, as cut.' },
  boltEach: { name: 'A bolt', counts: 'With nut and washers.' },
  paddingMetre: { name: 'Padding', counts: 'Along the tube.' },
  sawEach: { name: 'A hole saw', counts: 'Of any width.' },
  tax: { name: 'Tax', counts: 'On the whole price.' },
} as const satisfies Readonly<Record<Exclude<RateName, Timed>, Said>>;

/** What a rate is called, and what it is for. */
export const rateNamed = (name: RateName): Said =>
  name in OTHER_RATES ? OTHER_RATES[name as keyof typeof OTHER_RATES] : TIMED[name as Timed];
