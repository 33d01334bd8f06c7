/** The numbers of the tubes, as they are chalked on steel and printed on sheets. */
import * as v from 'valibot';
import { fault, NOT_WHOLE, placeOf, quoted, type Fault } from '../fault.ts';
import { GREATEST_NUMBER } from '../limits.ts';
import { number } from './fields.ts';

/** By id of the tube: hoop, stay', harness.2. */
export type TubeNumbers = Readonly<Record<string, number>>;

export const tubeNumber = v.pipe(
  number(1, GREATEST_NUMBER, 'numbers count from 1', `beyond ${GREATEST_NUMBER}`),
  v.integer(NOT_WHOLE),
);

/** A list would pass for a record that goes by 0, 1, 2. */
export const tubeNumbers = v.pipe(
  v.unknown(),
  v.check((value) => !Array.isArray(value), 'not an object'),
  v.record(v.string(), tubeNumber),
);

/** Two tubes that go by one number: nobody could tell their sheets apart. A number whose tube is not there takes nothing from anybody. */
export function numberFaults(numbers: TubeNumbers | undefined): readonly Fault[] {
  const first = new Map<number, string>();
  return Object.entries(numbers ?? {}).flatMap(([tube, given]) => {
    const before = first.get(given);
    if (before === undefined) first.set(given, tube);
    return before === undefined ? [] : [fault(placeOf(['numbers', tube]), `${given} is already ${quoted(before)}`)];
  });
}
