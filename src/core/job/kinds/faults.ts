/** What can be wrong with records of more kinds than one. */
import { remembered } from '../../remembered.ts';
import { fault, quoted, type Fault } from '../fault.ts';
import type { TubeRef } from '../reference.ts';

/** Shorter than this, mm, an arrow is a mistake and its direction noise. */
const LEAST_ARROW = 1e-9;

/** A direction needs a length. */
export const arrowFaults = (arrow: readonly number[], place: string): readonly Fault[] =>
  arrow.some((part) => Math.abs(part) >= LEAST_ARROW) ? [] : [fault(place, 'has no length, so no direction')];

export const atMost = (most: number, list: readonly unknown[], place: string): readonly Fault[] =>
  list.length <= most ? [] : [fault(place, `more than ${most}`)];

/** A tube has one record in such a list; `index` is where this one stands in it. */
export function tubeTwice(records: readonly OfTube[], index: number, list: string): readonly Fault[] {
  const { tube } = records[index]!;
  const first = firstOfTubes(records).get(tube);
  return first === index ? [] : [fault(`${list}[${index}].tube`, `${quoted(tube)} is already ${list}[${first}]`)];
}

interface OfTube {
  readonly tube: TubeRef;
}

const firstOfTubes = remembered(
  (records: readonly OfTube[]) => new Map(records.map(({ tube }, i) => [tube, i] as const).toReversed()),
);

/** One bend stands once in an order, and once among those made. */
export function bendsTwice(made: readonly { readonly bend: number }[], place: string): readonly Fault[] {
  const seen = new Set<number>();
  return made.flatMap(({ bend }, i) =>
    seen.size < seen.add(bend).size ? [] : [fault(`${place}[${i}].bend`, `bend ${bend} is there already`)],
  );
}
