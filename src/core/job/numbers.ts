/**
 * The number that a tube is called by in the shop: chalked on it, printed on its sheet, in the name of its wrap. It is given once: once the
 * job says what a tube's number is, none that comes, goes or changes its place gives it another. A job that says nothing
 * numbers its tubes by build order.
 */
import { tubesOfMember } from './member-of-tube.ts';
import type { TubeRef } from './reference.ts';
import type { Job } from './types.ts';

type Numbered = Pick<Job, 'members' | 'numbers' | 'lastNumber'>;

/** What all tubes are called, in build order: pieces from end A, a twin's after its member's. */
export const tubesInOrder = ({ members }: Pick<Job, 'members'>): readonly TubeRef[] => members.flatMap(tubesOfMember);

/** The greatest number given, whether its tube is there or not; 0 where the job gives none. */
export const lastNumberOf = ({ numbers, lastNumber = 0 }: Pick<Job, 'numbers' | 'lastNumber'>): number =>
  Math.max(lastNumber, 0, ...Object.values(numbers ?? {}));

/**
 * The number of every tube, in build order: 1 and up. A tube that the job gives none comes after the greatest given. No two are
 * alike where those of the job are not.
 */
export function numbersOf(job: Numbered): ReadonlyMap<TubeRef, number> {
  const { numbers = {} } = job;
  let last = job.numbers === undefined ? 0 : lastNumberOf(job);
  return new Map(
    tubesInOrder(job).map((tube) => [tube, Object.hasOwn(numbers, tube) ? numbers[tube]! : (last += 1)] as const),
  );
}
