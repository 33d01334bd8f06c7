/**
 * Whether two jobs are evidently two states of one. A name is soon alike (the demo, "Untitled job"), and ids count up from 1 in every job
 * that is begun empty; so what is counted are things: points, readings, nodes and members that have one id in both and are one thing by
 * what else is said of them (same-thing.ts). Half of those of the smaller job make it another state, whatever it is called now; where both are
 * called alike, a quarter. A job in which nothing stands is no state of any other.
 */
import type { Job } from '../job/types.ts';
import { isSameThing } from './same-thing.ts';

const COUNTED = ['points', 'measurements', 'nodes', 'members'] as const;

const SHARE = 1 / 2;
const SHARE_OF_NAMESAKES = 1 / 4;

/** Whether `other` is evidently another state of the job, or the same. */
export function isSameJob(job: Job, other: Job): boolean {
  const count = (one: Job): number => COUNTED.reduce((sum, list) => sum + one[list].length, 0);
  const least = Math.min(count(job), count(other));
  const alike = COUNTED.reduce((sum, list) => sum + thingsInBoth(list, job, other), 0);
  return alike > 0 && alike >= least * (job.name === other.name ? SHARE_OF_NAMESAKES : SHARE);
}

function thingsInBoth(list: (typeof COUNTED)[number], job: Job, other: Job): number {
  type R = Job[typeof list][number];
  const [ours, theirs]: readonly [readonly R[], readonly R[]] = [job[list], other[list]];
  const there = new Map<string, R>(theirs.map((record) => [record.id, record]));
  return ours.filter((record) => there.has(record.id) && isSameThing(list, record, there.get(record.id)!)).length;
}
