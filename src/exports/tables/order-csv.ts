/** The order list as a table: a row a thing to get, what has no price with its cells empty. */
import type { Derived } from '../../core/derive.ts';
import type { Bought } from '../../core/quote/bought.ts';
import { orderList } from '../../core/quote/order.ts';
import type { PlanOf } from '../../core/quote/sticks.ts';
import { length, other, type Column } from './columns.ts';

export interface OrderRow {
  readonly what:
    | 'stick'
    | 'tube'
    | 'foot'
    | 'foot-sheet'
    | 'foot-steel'
    | 'gusset'
    | 'gusset-steel'
    | 'bolt'
    | 'bolts'
    | 'padding'
    | 'hole-saw'
    | 'hole-saws';
  readonly name: string;
  /** Pieces; null of what is sold by the length alone. */
  readonly count: number | null;
  /** Of each, mm; of tube and padding in all. */
  readonly length: number | null;
  readonly thickness: number | null;
  /** Of each, mm2: flat, all its pieces; of sheet for feet in all. */
  readonly area: number | null;
  /** Of the section, of a bolt's hole, of a hole saw: mm. */
  readonly diameter: number | null;
  readonly batch: string | null;
  readonly bought: Pick<Bought, 'each' | 'cost'> | null;
  /** What it is sold by, and how much that is; null: by the piece. */
  readonly by: Pick<Bought, 'quantity' | 'measure'> | null;
}

const EMPTY = {
  name: '',
  count: null,
  length: null,
  thickness: null,
  area: null,
  diameter: null,
  batch: null,
  bought: null,
  by: null,
} as const;

/** What is to be got: what stands on the rack, and saws that are there, have no row. */
export function orderRows(derived: Derived, plans: readonly PlanOf[]): readonly OrderRow[] {
  const list = orderList(derived, plans);
  const section = (id: string) => derived.job.sections.find((each) => each.id === id)!;
  return [
    ...list.sticks.map(({ stick, count, cost }): OrderRow => ({
      ...EMPTY,
      what: 'stick',
      name: section(stick.section).name,
      count,
      length: stick.length,
      diameter: section(stick.section).outerDiameter,
      batch: stick.batch ?? null,
      bought: { each: stick.cost ?? null, cost },
    })),
    ...list.wanted.map(({ section: of, length, count, batch }): OrderRow => {
      const { name, outerDiameter } = section(of);
      return { ...EMPTY, what: 'stick', name, count, length, diameter: outerDiameter, batch };
    }),
    ...list.unplanned.map(({ section: of, length }): OrderRow => {
      const { name, outerDiameter } = section(of);
      return { ...EMPTY, what: 'tube', name, length, diameter: outerDiameter };
    }),
    ...list.feet.map(({ foot, count, area }): OrderRow => ({
      ...EMPTY,
      what: 'foot',
      name: foot.name,
      count,
      thickness: foot.thickness,
      area,
    })),
    ...list.footSheet.map(({ thickness, area }): OrderRow => ({ ...EMPTY, what: 'foot-sheet', thickness, area })),
    ...sold('foot-steel', list.bought.footSteel),
    ...list.gussets.map(({ gusset, count, area }): OrderRow => ({
      ...EMPTY,
      what: 'gusset',
      name: gusset.name,
      count,
      thickness: gusset.thickness,
      area,
    })),
    ...sold('gusset-steel', list.bought.gussetSteel),
    ...list.bolts.map(({ hole, count }): OrderRow => ({ ...EMPTY, what: 'bolt', count, diameter: hole })),
    ...sold('bolts', list.bought.bolts),
    ...sold('padding', list.bought.padding),
    ...list.saws
      .filter(({ isThere }) => !isThere)
      .map(({ diameter }): OrderRow => ({ ...EMPTY, what: 'hole-saw', count: 1, diameter })),
    ...sold('hole-saws', list.bought.saws),
  ];
}

/** What is sold by the measure, all of it together. */
const sold = (what: OrderRow['what'], bought: Bought | null): readonly OrderRow[] =>
  bought === null ? [] : [{ ...EMPTY, what, bought, by: bought }];

/** In the order of the file. */
export const ORDER_COLUMNS: readonly Column<OrderRow>[] = [
  other('what', ({ what }) => what),
  other('name', ({ name }) => name),
  other('count', ({ count }) => count),
  length('length', (row) => row.length),
  length('diameter', ({ diameter }) => diameter),
  length('thickness', ({ thickness }) => thickness),
  other('area_mm2', ({ area }) => area),
  other('batch', ({ batch }) => batch),
  other('quantity', ({ by }) => by?.quantity ?? null),
  other('sold_by', ({ by }) => by?.measure ?? null),
  other('price_each', ({ bought }) => bought?.each ?? null),
  other('price', ({ bought }) => bought?.cost ?? null),
];
