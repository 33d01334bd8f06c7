/** What can be wrong with records of more kinds than one; places are counted from the record. */
import { fault, type Fault } from '../fault.ts';

/** Shorter than this, mm, an arrow is a slip and its direction noise. */
const LEAST_ARROW = 1e-9;

/** A direction needs a length. */
export const arrowFaults = (arrow: readonly number[], place: string): readonly Fault[] =>
  arrow.some((part) => Math.abs(part) >= LEAST_ARROW) ? [] : [fault(place, 'has no length, so no direction')];

export const atMost = (most: number, list: readonly unknown[], place: string): readonly Fault[] =>
  list.length <= most ? [] : [fault(place, `more than ${most}`)];
