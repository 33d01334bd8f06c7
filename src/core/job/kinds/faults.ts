/** What can be wrong with records of more kinds than one; places are counted from the record. */
import { fault, type Fault } from '../fault.ts';

/** Shorter than this, mm, an arrow is a slip and its direction noise. */
const LEAST_ARROW = 1e-9;

/** A direction needs a length. */
export const arrowFaults = (arrow: readonly number[], place: string): readonly Fault[] =>
  arrow.some((part) => Math.abs(part) >= LEAST_ARROW) ? [] : [fault(place, 'has no length, so no direction')];

export const atMost = (most: number, list: readonly unknown[], place: string): readonly Fault[] =>
  list.length <= most ? [] : [fault(place, `more than ${most}`)];

/** One bend stands once in an order, and once among those made. */
export function* bendsTwice(made: readonly { readonly bend: number }[], place: string): Generator<Fault> {
  const seen = new Set<number>();
  for (const [i, { bend }] of made.entries()) {
    if (seen.has(bend)) yield fault(`${place}[${i}].bend`, `bend ${bend} is there already`);
    seen.add(bend);
  }
}
