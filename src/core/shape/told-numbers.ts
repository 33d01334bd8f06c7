/** Numbers of tubes that are called otherwise after an edit: the steel is the same, so its number is. */
import { withNumbers } from '../edit/numbers.ts';
import { lastNumberOf, numbersOf, tubesInOrder } from '../job/numbers.ts';
import type { TubeRef } from '../job/reference.ts';
import type { Job } from '../job/types.ts';

/**
 * The changed job, with the number on each tube that it had under the name that `was` gives. Where build order says the same as what was written down, nothing is.
 */
export function withToldNumbers(before: Job, after: Job, was: (tube: TubeRef) => TubeRef): Job {
  const were = numbersOf(before);
  const tubes = tubesInOrder(after);
  const told = tubes.flatMap((tube): (readonly [TubeRef, number])[] => {
    const number = were.get(was(tube));
    return number === undefined ? [] : [[tube, number]];
  });
  const last = Math.max(lastNumberOf(before), ...were.values());
  const putBy = Object.entries(before.numbers ?? {}).filter(([tube]) => !were.has(tube));
  const isByOrder = last === tubes.length && told.every(([tube, number], i) => tube === tubes[i] && number === i + 1);
  if (isByOrder && putBy.length === 0 && before.numbers !== undefined) {
    const { numbers: _, lastNumber: __, ...plain } = after;
    return plain;
  }
  return withNumbers(after, [...putBy, ...told], last);
}
