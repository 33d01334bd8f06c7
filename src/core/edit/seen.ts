/** Edits of what was seen of the checks. */
import { sameData } from '../job/equal.ts';
import type { Seen } from '../job/kinds/seen.ts';
import type { Job } from '../job/types.ts';

/** All of these marked as seen; an older mark of the same finding goes. */
export function markSeen(job: Job, marks: readonly Seen[]): Job {
  const fresh = marks.filter((mark) => !job.seen.some((each) => sameData(each, mark)));
  if (fresh.length === 0) return job;
  return { ...job, seen: [...job.seen.filter((each) => !fresh.some((mark) => sameFinding(each, mark))), ...fresh] };
}

/** None of these marked as seen. */
export function unmarkSeen(job: Job, marks: readonly Seen[]): Job {
  const seen = job.seen.filter((each) => !marks.some((mark) => sameFinding(each, mark)));
  return seen.length === job.seen.length ? job : { ...job, seen };
}

const sameFinding = (a: Seen, b: Seen): boolean =>
  a.finding === b.finding && a.tube === b.tube && a.end === b.end && a.bend === b.bend;
