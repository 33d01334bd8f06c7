/**
 * Edits of the tubes' numbers. A job goes without any for as long as build order says the same; the edit that would change the
 * number of a tube, or free one for another, writes down those that stood before it.
 */
import { fault, quoted } from '../job/fault.ts';
import { sameData } from '../job/equal.ts';
import { lastNumberOf, numbersOf, tubesInOrder } from '../job/numbers.ts';
import { bareId, isPrimed, pieceNamed, type TubeRef } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import type { Edited } from './records.ts';

/**
 * The job that an edit made of `before`, so that every tube keeps its number, and none goes by that of a tube which is gone: new
 * ones take the next free at the end. A bar made whole that was in pieces, or the other way round, has its numbers put by, for when it is made
 * as it was. The same job where all that is so already, and where the edit says the numbers itself.
 */
export function keepNumbers(before: Job, after: Job): Job {
  if (after.members === before.members || after.numbers !== before.numbers) return after;
  const [were, are] = [numbersOf(before), numbersOf(after)];
  const last = Math.max(lastNumberOf(before), ...were.values());
  const isKept =
    [...are].every(([tube, number]) => (were.has(tube) ? were.get(tube) === number : number > last)) &&
    [...were.keys()].every((tube) => are.has(tube));
  if (isKept && after.numbers === undefined) return after;
  const putBy = new Map(Object.entries(before.numbers ?? {}).filter(([tube]) => !were.has(tube)));
  let next = last;
  const numbers = tubesInOrder(after).map((tube) => [tube, were.get(tube) ?? putBy.get(tube) ?? (next += 1)] as const);
  const away = [...putBy, ...were].filter(([tube]) => !are.has(tube) && isOtherwiseMade(tube, after));
  const kept = withNumbers(after, [...numbers, ...away], next);
  return sameData(kept.numbers, after.numbers) && kept.lastNumber === after.lastNumber ? after : kept;
}

/** Whether the tube, which is not there, would be one of a member that is: a piece of a bar made whole, or the whole of one in pieces. */
const isOtherwiseMade = (tube: TubeRef, { members }: Job): boolean =>
  members.some(
    ({ id, mirror }) => (id === bareId(tube) || id === pieceNamed(tube)?.member) && (mirror || !isPrimed(tube)),
  );

/** The tube goes by another number from now on. Refused while another tube goes by that. */
export function setNumber(job: Job, tube: TubeRef, number: number): Edited {
  const are = numbersOf(job);
  if (are.get(tube) === number || !are.has(tube)) return job;
  const holder = [...are].find(([, taken]) => taken === number)?.[0];
  if (holder !== undefined) return [fault('', `${number} is the number of ${quoted(holder)}`)];
  const last = Math.max(lastNumberOf(job), number, ...are.values());
  const putBy = Object.entries(job.numbers ?? {}).filter(([other, taken]) => !are.has(other) && taken !== number);
  return withNumbers(job, [...putBy, ...new Map(are).set(tube, number)], last);
}

/** All tubes by build order, from 1, as in a job that never gave a number: those of tubes that are gone are free again. */
export function numberByBuildOrder(job: Job): Job {
  if (job.numbers === undefined && job.lastNumber === undefined) return job;
  const { numbers: _, lastNumber: __, ...rest } = job;
  return rest;
}

/** A tube whose number is another now: what is chalked or printed with the old one is waste. */
export interface Renumbered {
  readonly tube: TubeRef;
  readonly from: number;
  readonly to: number;
}

/** Of the tubes that are in both jobs, in build order. */
export function renumbered(before: Job, after: Job): readonly Renumbered[] {
  const were = numbersOf(before);
  return [...numbersOf(after)].flatMap(([tube, to]) => {
    const from = were.get(tube);
    return from === undefined || from === to ? [] : [{ tube, from, to }];
  });
}

/** The job with these numbers, and the greatest that was ever given. */
export function withNumbers(job: Job, numbers: readonly (readonly [TubeRef, number])[], lastNumber: number): Job {
  if (numbers.length === 0 && lastNumber === 0) return job;
  return { ...job, numbers: Object.fromEntries(numbers.filter(([tube]) => !isRefusedKey(tube))), lastNumber };
}

/** No file may hold a key that every object has already (toString); a tube of that id goes without, after all others. */
const isRefusedKey = (tube: TubeRef): boolean => tube in Object.prototype;
