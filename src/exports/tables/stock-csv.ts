/** The cutting plan as a table: a row a part, stick by stick, in the order in which they are cut. */
import type { Derived } from '../../core/derive.ts';
import type { Stick } from '../../core/job/kinds/stick.ts';
import type { SectionPlan } from '../../core/stock/of-job.ts';
import { stickNumbers } from '../../core/stock/saw-order.ts';
import { length, other, type Column } from './columns.ts';
import { fabricationStock, type FabricationPart } from './stock.ts';

interface StockRow {
  /** As in the cut list. */
  readonly number: number;
  readonly stick: Stick;
  readonly section: string;
  readonly left: number;
  /** 1 = the first that is cut from it. */
  readonly cut: number;
  readonly part: FabricationPart;
  readonly tube: { readonly number: number; readonly name: string } | null;
}

/** What is in the plan; what is not has no row. */
export function stockRows({ job, byId }: Derived, plans: readonly SectionPlan[]): readonly StockRow[] {
  const sticks = new Map(job.stickSorts.map((stick) => [stick.id, stick]));
  const sections = new Map(job.sections.map(({ id, name }) => [id, name]));
  const numbers = stickNumbers(plans, job).flat();
  return fabricationStock(plans).plan.flatMap(({ stick: id, cuts, left }, i) => {
    const stick = sticks.get(id)!;
    return cuts.map((part, at): StockRow => {
      const tube = 'tube' in part ? byId.get(part.tube)! : null;
      return { number: numbers[i]!, stick, section: sections.get(stick.section)!, left, cut: at + 1, part, tube };
    });
  });
}

/** In the order of the file. */
export const STOCK_COLUMNS: readonly Column<StockRow>[] = [
  other('stick_number', ({ number }) => number),
  other('stick', ({ stick }) => stick.id),
  other('section', ({ section }) => section),
  other('batch', ({ stick }) => stick.batch ?? null),
  length('stick_length', ({ stick }) => stick.length),
  other('cut', ({ cut }) => cut),
  other('number', ({ tube }) => tube?.number ?? null),
  other('tube', ({ part }) => ('tube' in part ? part.tube : null)),
  other('spare', ({ part }) => ('spare' in part ? part.spare : null)),
  other('name', ({ tube }) => tube?.name ?? null),
  length('length', ({ part }) => part.length),
  length('left', ({ left }) => left),
];
