/** Parts and sticks as lots, sorts and lays, and lays as a plan again. */
import type { Lay, Lot, Problem } from './lays.ts';
import type { CutPlan, CutStick, Part, Sawing, StickSort } from './types.ts';

/** What a stick gives, with a kerf, mm; nothing or less where it is too short to be squared off. */
export const roomOf = ({ length }: StickSort, { squareOff, kerf }: Sawing): number => length - squareOff + kerf;

/** The sorts that there are sticks of, and that give something. */
export const sortsOf = (sticks: readonly StickSort[], sawing: Sawing): readonly StickSort[] =>
  sticks.filter((stick) => stick.count > 0 && roomOf(stick, sawing) > 0);

/** Of parts that all go on some stick. */
export const problemOf = (parts: readonly Part[], sorts: readonly StickSort[], sawing: Sawing): Problem => ({
  sorts,
  room: sorts.map((sort) => roomOf(sort, sawing)),
  lots: lotsOf(parts, sawing),
});

/** In the money of the sticks. */
export const costOf = (lays: readonly Lay[], sorts: readonly StickSort[]): number =>
  lays.reduce((sum, { sort }) => sum + sorts[sort]!.cost, 0);

/** By what the costs of two plans differ, money. */
export interface Step {
  /** The least that they differ by; where costs come in no steps, plans nearer than this to each other are taken to cost the same. */
  readonly size: number;
  /** Whether every cost is a whole number of them. */
  readonly isWhole: boolean;
}

/** Costs, 0 and more, come in steps, their greatest common divisor, where they are whole thousandths of the money's unit; else a millionth of the dearest stick tells plans apart. */
export function costStep(sorts: readonly StickSort[]): Step {
  const costs = sorts.map(({ cost }) => cost * FINEST);
  if (costs.some((cost) => Math.abs(cost - Math.round(cost)) > WHOLE))
    return { size: (WHOLE * costs.reduce((most, cost) => Math.max(most, cost), 0)) / FINEST, isWhole: false };
  const size = costs.map(Math.round).reduce(greatestDivisor, 0);
  return { size: Math.max(size, 1) / FINEST, isWhole: true };
}

const FINEST = 1000;

const greatestDivisor = (a: number, b: number): number => (b === 0 ? a : greatestDivisor(b, a % b));

/** Of a figure: nearer than this to a whole number it is one. */
const WHOLE = 1e-6;

/** A bound, to a whole step where costs come in such; what stands above one by rounding alone is that. */
export const roundedUp = (bound: number, { size, isWhole }: Step): number =>
  isWhole ? Math.ceil(bound / size - WHOLE) * size : bound;

/** What no plan costs less than, once it is known that none costs just that. */
export const stepOn = (bound: number, { size, isWhole }: Step): number => (isWhole ? bound + size : bound);

/** Whether a plan of the cost is the cheapest, where no plan costs less than the bound. */
export const isLeast = (cost: number, bound: number, { size }: Step): boolean => cost <= bound + size / 2;

/** The bound as it goes with a plan of the cost: that very figure where the plan is the cheapest, below it else. */
export const leastBeside = (cost: number, bound: number, step: Step): number =>
  isLeast(cost, bound, step) ? cost : bound;

/** Parts of one key are alike: of one lot. */
const lotKey = (length: number, batch: string | null): string => `${length}|${batch === null ? '' : `=${batch}`}`;

/** The longest first. */
function lotsOf(parts: readonly Part[], { kerf }: Sawing): readonly Lot[] {
  const lots = new Map<string, Lot>();
  for (const { length, batch } of parts) {
    const key = lotKey(length + kerf, batch);
    lots.set(key, { length: length + kerf, batch, count: (lots.get(key)?.count ?? 0) + 1 });
  }
  return [...lots.values()].toSorted((one, other) => other.length - one.length);
}

/** The lays as sticks with the parts that go on them, and what they cost: the stick with the longest part first, and on a stick the longest first: what is dearest to spoil is cut while all sticks are there. */
export function planOf(
  lays: readonly Lay[],
  { sorts, lots }: Problem,
  parts: readonly Part[],
  { kerf, squareOff }: Sawing,
): Pick<CutPlan, 'sticks' | 'cost'> {
  const byKey = new Map(lots.map(({ length, batch }) => [lotKey(length, batch), [] as Part[]]));
  for (const part of parts) byKey.get(lotKey(part.length + kerf, part.batch))!.push(part);
  const waiting = [...byKey.values()];
  const given = lots.map(() => 0);
  const longest = ({ of }: Lay): number => of.findIndex((count) => count > 0);
  const sticks = lays
    .toSorted((one, other) => longest(one) - longest(other))
    .map(({ sort, of }): CutStick => {
      const on: Part[] = [];
      of.forEach((count, lot) => {
        for (let i = 0; i < count; i++) on.push(waiting[lot]![given[lot]!++]!);
      });
      const used = on.reduce((sum, { length }) => sum + length + kerf, squareOff);
      return { stick: sorts[sort]!.id, parts: on, left: Math.max(0, sorts[sort]!.length - used) };
    });
  return { sticks, cost: costOf(lays, sorts) };
}
