/**
 * A quote, line by line: how many of what, at which rate of the shop, and what that comes to. A line whose rate nobody has said counts for nothing and says so. Facts; core/words/quote.ts
 * says how each came. Money, hours and measures are rounded to two decimals where they are shown, and go on as shown (core/units/money.ts).
 */
import type { Extra, Took } from '../job/kinds/quote.ts';
import type { Tax, Timed } from '../job/kinds/rates.ts';
import type { SectionId } from '../job/reference.ts';
import type { Judged } from '../rules/questions.ts';
import { amountsOf } from './amounts.ts';
import { allBought, type Bought } from './bought.ts';
import { rounded, shareOf, summed } from '../units/money.ts';
import {
  cutUntold,
  lineKey,
  lengthsToCut,
  nameOfLike,
  sticksAlike,
  sticksWanted,
  type AlikeSticks,
  type PlanOf,
} from './sticks.ts';
import { longMeasure, perBase, rateBy, type Measure } from './units.ts';

/** As the customer's page has them. */
export const QUOTE_GROUPS = ['material', 'making', 'feet', 'extras'] as const;
export type QuoteGroup = (typeof QUOTE_GROUPS)[number];

/** What a line is about. */
export type LineOf =
  | { readonly kind: 'sticks'; readonly alike: AlikeSticks }
  | { readonly kind: 'wanted' | 'unplanned'; readonly section: SectionId; readonly length: number }
  /** Tubes that are cut, and nobody noted of which stick; gussets that cannot be made. */
  | { readonly kind: 'cut-already' | 'unmade' }
  | { readonly kind: 'bolts' | 'saws' | 'padding' | 'footSteel' | 'gussetSteel' }
  | { readonly kind: Timed }
  | { readonly kind: 'extra'; readonly extra: Extra };

export interface QuoteLine {
  /** What `took` of the job names it by. */
  readonly id: string;
  readonly group: QuoteGroup;
  readonly of: LineOf;
  readonly quantity: number;
  readonly measure: Measure;
  /** price: money each; time: minutes each; typed: the amount as it stands; unknown: there is no rate for such a thing. */
  readonly by: 'price' | 'time' | 'typed' | 'unknown';
  /** Null: nobody has said. */
  readonly each: number | null;
  readonly hours: number | null;
  readonly amount: number | null;
  readonly took: LineTook;
}

/** Of all entries for a line; null where none says so. */
export interface LineTook {
  readonly hours: number | null;
  readonly paid: number | null;
  readonly entries: readonly Took[];
}

export interface GroupSum {
  readonly group: QuoteGroup;
  readonly amount: number;
  readonly overhead: number;
  readonly margin: number;
  readonly price: number;
}

export interface Reckoned {
  readonly lines: readonly QuoteLine[];
  /** Of groups that have a line. */
  readonly groups: readonly GroupSum[];
  /** All groups together. */
  readonly whole: Omit<GroupSum, 'group'>;
  /** The tax on the whole price where the shop reckons one, and what is to be paid with it. */
  readonly tax: (Tax & { readonly amount: number }) | null;
  readonly toPay: number;
  readonly hours: number;
  /** Lines that count for nothing since no rate is known. */
  readonly unpriced: readonly QuoteLine[];
  readonly took: { readonly hours: number; readonly paid: number };
  /** Entries for lines that the quote has no more. */
  readonly stray: readonly Took[];
}

type Unmarked = Omit<QuoteLine, 'took'>;

/** By the plans that there are, and the job's own rates. */
export function reckonQuote(frame: Judged, plans: readonly PlanOf[]): Reckoned {
  const { quote = {} } = frame.job;
  const { overhead = 0, margin = 0, tax } = quote.rates ?? {};
  const took = quote.took ?? [];
  const lines = [...materials(frame, plans), ...making(frame), ...extras(quote.extras ?? [])].map(
    (line): QuoteLine => ({ ...line, took: tookOf(took.filter((entry) => lineKey(entry.line) === lineKey(line.id))) }),
  );
  const groups = QUOTE_GROUPS.flatMap((group): readonly GroupSum[] => {
    const own = lines.filter((line) => line.group === group);
    if (own.length === 0) return [];
    const amount = summed(own.map((line) => line.amount ?? 0));
    // What the shop has typed as a price is one.
    const over = group === 'extras' ? 0 : shareOf(amount, overhead);
    const on = group === 'extras' ? 0 : shareOf(summed([amount, over]), margin);
    return [{ group, amount, overhead: over, margin: on, price: summed([amount, over, on]) }];
  });
  const all = (of: (sum: GroupSum) => number): number => summed(groups.map(of));
  const price = all((sum) => sum.price);
  const taxed = tax === undefined ? null : { ...tax, amount: shareOf(price, tax.percent) };
  const ids = new Set(lines.map(({ id }) => lineKey(id)));
  return {
    lines,
    groups,
    whole: {
      amount: all(({ amount }) => amount),
      overhead: all((sum) => sum.overhead),
      margin: all((sum) => sum.margin),
      price,
    },
    tax: taxed,
    toPay: summed([price, taxed?.amount ?? 0]),
    hours: summed(lines.map(({ hours }) => hours ?? 0)),
    unpriced: lines.filter(({ amount }) => amount === null),
    took: {
      hours: summed(took.map(({ hours = 0 }) => hours)),
      paid: summed(took.map(({ paid = 0 }) => paid)),
    },
    stray: took.filter(({ line }) => !ids.has(lineKey(line))),
  };
}

function tookOf(entries: readonly Took[]): LineTook {
  const all = (of: (entry: Took) => number | undefined): number | null => {
    const said = entries.map(of).filter((figure) => figure !== undefined);
    return said.length === 0 ? null : summed(said);
  };
  return { hours: all(({ hours }) => hours), paid: all(({ paid }) => paid), entries };
}

function materials(frame: Judged, plans: readonly PlanOf[]): readonly Unmarked[] {
  const { job } = frame;
  const long = longMeasure(job.lengthUnit);
  const { bolts, saws, padding, footSteel, gussetSteel } = allBought(frame);
  return [
    ...sticksAlike(frame, plans).map((alike): Unmarked => {
      const { like, bought, rack, sawn } = alike;
      const quantity = bought + rack + sawn;
      const { cost: each = null } = like;
      return {
        id: nameOfLike(like),
        group: 'material',
        of: { kind: 'sticks', alike },
        quantity,
        measure: 'each',
        by: 'price',
        each,
        hours: null,
        amount: each === null ? null : rounded(quantity * each),
      };
    }),
    ...sticksWanted(plans).map(({ section, length, count }, i): Unmarked =>
      unknown(`wanted ${section} ${i + 1}`, { kind: 'wanted', section, length }, count, 'each'),
    ),
    ...lengthsToCut(frame).map(({ section, length }): Unmarked =>
      unknown(
        `tube ${section}`,
        { kind: 'unplanned', section, length },
        rounded((length / 1000) * perBase(long)),
        long,
      ),
    ),
    ...some(cutUntold(job), (count) => unknown('cut-already', { kind: 'cut-already' }, count, 'each')),
    ...bought('bolts', 'material', bolts),
    ...bought('saws', 'material', saws),
    ...bought('padding', 'material', padding),
    ...bought('footSteel', 'feet', footSteel),
    ...bought('gussetSteel', 'feet', gussetSteel),
    ...some(amountsOf(frame).unmade, (count) => ({
      ...unknown('unmade', { kind: 'unmade' }, count, 'each'),
      group: 'feet' as const,
    })),
  ];
}

function making(frame: Judged): readonly Unmarked[] {
  const { job } = frame;
  const amounts = amountsOf(frame);
  const { hourly, minutes = {} } = job.quote?.rates ?? {};
  const { tubes, spares, bends, copes, mitres, footCuts, welds } = amounts;
  const joints = welds.tubes.joints + welds.feet.joints;
  const long = longMeasure(job.lengthUnit);
  const metres = (welds.tubes.length + welds.feet.length) / 1000;
  const counted = (made: readonly { readonly count: number }[]): number =>
    made.reduce((sum, { count }) => sum + count, 0);
  const timed = (kind: Timed, count: number, group: QuoteGroup = 'making', measure: Measure = 'each') =>
    some(count, (some): Unmarked => {
      const rate = minutes[kind];
      const each = rate === undefined ? null : rateBy(rate, measure);
      const hours = each === null ? null : rounded((some * each) / 60);
      const amount = hours === null || hourly === undefined ? null : rounded(hours * hourly);
      return { id: kind, group, of: { kind }, quantity: some, measure, by: 'time', each, hours, amount };
    });
  return [
    ...timed('straightCut', tubes + spares),
    ...timed('cope', copes),
    ...timed('mitreCut', mitres),
    ...timed('footCut', footCuts),
    ...timed('bending', bends),
    ...timed('tubeFitting', tubes),
    ...timed('jointFitting', joints),
    ...timed('bendFitting', bends),
    ...timed('weldMetre', rounded(metres * perBase(long)), 'making', long),
    ...timed('footMaking', counted(amounts.feet), 'feet'),
    ...timed('gussetMaking', counted(amounts.gussets), 'feet'),
  ];
}

const extras = (all: readonly Extra[]): readonly Unmarked[] =>
  all.map((extra, i) => ({
    id: `extra ${i + 1}`,
    group: 'extras',
    of: { kind: 'extra', extra },
    quantity: 1,
    measure: 'each',
    by: 'typed',
    each: extra.amount,
    hours: null,
    amount: rounded(extra.amount),
  }));

const bought = (
  kind: 'bolts' | 'saws' | 'padding' | 'footSteel' | 'gussetSteel',
  group: QuoteGroup,
  all: Bought | null,
): readonly Unmarked[] => {
  if (all === null) return [];
  const { quantity, measure, each, cost } = all;
  return [{ id: kind, group, of: { kind }, quantity, measure, by: 'price', each, hours: null, amount: cost }];
};

const unknown = (id: string, of: LineOf, quantity: number, measure: Measure): Unmarked => ({
  id,
  group: 'material',
  of,
  quantity,
  measure,
  by: 'unknown',
  each: null,
  hours: null,
  amount: null,
});

/** Nothing where there is none. */
const some = (count: number, make: (count: number) => Unmarked): readonly Unmarked[] =>
  count > 0 ? [make(count)] : [];
