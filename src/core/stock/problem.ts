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

/** Costs, 0 and more, come in steps of this, where they are whole thousandths of the money's unit: no two plans differ by less. Else next to nothing. */
export function costStep(sorts: readonly StickSort[]): number {
  const costs = sorts.map(({ cost }) => cost * FINEST);
  if (costs.some((cost) => Math.abs(cost - Math.round(cost)) > WHOLE)) return WHOLE * Math.max(...costs);
  const step = costs.map(Math.round).reduce(greatestDivisor, 0);
  return Math.max(step, 1) / FINEST;
}

const FINEST = 1000;

const greatestDivisor = (a: number, b: number): number => (b === 0 ? a : greatestDivisor(b, a % b));

/** Of a figure: nearer than this to a whole number it is one. */
const WHOLE = 1e-6;

/** To a whole step; what stands above one by rounding alone is that. */
export const roundedUp = (cost: number, step: number): number => Math.ceil(cost / step - WHOLE) * step;

/** Parts that are alike are one lot; the longest first. */
function lotsOf(parts: readonly Part[], { kerf }: Sawing): readonly Lot[] {
  const lots = new Map<string, Lot>();
  for (const { length, batch } of parts) {
    const key = `${length + kerf}|${batch ?? ''}`;
    const lot = lots.get(key);
    lots.set(key, { length: length + kerf, batch, count: (lot?.count ?? 0) + 1 });
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
  const waiting = lots.map((lot) =>
    parts.filter((part) => part.length + kerf === lot.length && part.batch === lot.batch),
  );
  const longest = ({ of }: Lay): number => of.findIndex((count) => count > 0);
  const sticks = lays
    .toSorted((one, other) => longest(one) - longest(other))
    .map(({ sort, of }): CutStick => {
      const on = of.flatMap((count, lot) => waiting[lot]!.splice(0, count));
      const used = on.reduce((sum, { length }) => sum + length + kerf, squareOff);
      return { stick: sorts[sort]!.id, parts: on, left: Math.max(0, sorts[sort]!.length - used) };
    });
  return { sticks, cost: costOf(lays, sorts) };
}
