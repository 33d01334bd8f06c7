/**
 * Edits of how tubes are fed and marked: for all tubes of the job, and for one tube where it is not as the others. A tube has one entry
 * at most, and none that says nothing.
 */
import { FIRST_MARKING } from '../job/kinds/marking.ts';
import type { BendStep } from '../job/kinds/bent.ts';
import type { Job } from '../job/types.ts';
import type { Marking } from '../job/kinds/marking.ts';
import type { TubeFeed } from '../job/kinds/feed.ts';
import type { TubeRef } from '../job/reference.ts';
import { sameData } from '../job/equal.ts';
import { patched } from './records.ts';

/** Of all tubes that have none of their own. */
export function setMarking(job: Job, fields: Partial<Marking>): Job {
  const marking = patched(job.marking ?? FIRST_MARKING, fields);
  return marking === job.marking ? job : { ...job, marking };
}

export const findFeed = (job: Job, tube: TubeRef): TubeFeed | undefined => job.feeds.find((feed) => feed.tube === tube);

/** The end that the tape is hooked over on this tube; null: as on the others. */
export const setTubeFrom = (job: Job, tube: TubeRef, from: Marking['from'] | null): Job =>
  withField(job, tube, 'from', from);

/** The order in which this tube's bends are made, every bend once; null: as the marks come. */
export const setTubeOrder = (job: Job, tube: TubeRef, order: readonly BendStep[] | null): Job =>
  withField(job, tube, 'order', order);

/** Takes out what the job keeps of how these tubes are fed. */
export function dropFeeds(job: Job, tubes: readonly TubeRef[]): Job {
  const feeds = job.feeds.filter(({ tube }) => !tubes.includes(tube));
  return feeds.length === job.feeds.length ? job : { ...job, feeds };
}

function withField<K extends 'from' | 'order'>(job: Job, tube: TubeRef, key: K, value: TubeFeed[K] | null): Job {
  const before = findFeed(job, tube);
  if (sameData(before?.[key] ?? null, value)) return job;
  const { [key]: _, ...rest } = before ?? { tube };
  const after = value === null ? rest : { ...rest, [key]: value };
  if (!('from' in after) && !('order' in after)) return dropFeeds(job, [tube]);
  const feed = after as TubeFeed;
  if (before === undefined) return { ...job, feeds: [...job.feeds, feed] };
  return { ...job, feeds: job.feeds.map((each) => (each === before ? feed : each)) };
}
