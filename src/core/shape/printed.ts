/** What was printed of tubes, kept in the job so that waste paper is known. */
import type { Printed } from '../job/kinds/printed.ts';
import type { Job } from '../job/types.ts';
import { feedOf } from '../solve/feed.ts';
import { revisionOf } from '../solve/revision.ts';
import type { Frame, SolvedTube } from '../solve/types.ts';

/** The job with all of the frame's tubes printed as they are in it, on that day (2026-03-02). The same job where that stands there. */
export function withPrinted(job: Job, frame: Frame, on: string): Job {
  const before = new Map(job.printed.map((each) => [each.tube, each]));
  for (const tube of frame.tubes) {
    const revision = revisionOf(frame.job, tube);
    if (before.get(tube.id)?.revision === revision) continue;
    const { cutLength } = feedOf(frame.job, tube);
    before.set(tube.id, { tube: tube.id, revision, cutLength, on });
  }
  const printed = [...before.values()];
  return printed.length === job.printed.length && printed.every((each, i) => each === job.printed[i])
    ? job
    : { ...job, printed };
}

/** Paper that is out of date: of which tube, null where that is gone, and its revision now. */
export interface Waste {
  readonly printed: Printed;
  readonly tube: SolvedTube | null;
  readonly revision: string | null;
  /** By how much what there is to cut is longer now, mm; 0 where the tube is gone. */
  readonly longer: number;
}

/** In the order of the tubes; last what is of tubes that are gone. */
export function wastePaper({ job, tubes, byId }: Frame): readonly Waste[] {
  const known = new Map(job.printed.map((each) => [each.tube, each]));
  const changed = tubes.flatMap((tube): readonly Waste[] => {
    const printed = known.get(tube.id);
    const revision = revisionOf(job, tube);
    if (printed === undefined || printed.revision === revision) return [];
    return [{ printed, tube, revision, longer: feedOf(job, tube).cutLength - printed.cutLength }];
  });
  const gone = job.printed.filter(({ tube }) => !byId.has(tube));
  return [...changed, ...gone.map((printed): Waste => ({ printed, tube: null, revision: null, longer: 0 }))];
}
