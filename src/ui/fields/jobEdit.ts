/** Binds a field to the job: a commit is one undo step, and so is a row of nudges, shown live while it lasts. */
import type { Job } from '../../core/job/types.ts';
import { jobDocument } from '../../store/page.ts';
import type { Committing } from './EntryField.tsx';

/** `label` names the step in undo; `change` makes the new job from the old one and the value. */
export function jobEdit<T>(label: string, change: (job: Job, value: T) => Job): Required<Committing<T>> {
  return {
    commit: (value) => jobDocument.getState().edit(label, (job) => change(job, value)),
    nudge(value, first, ended) {
      if (first) jobDocument.getState().begin(label, ended);
      return jobDocument.getState().preview((job) => change(job, value));
    },
    endNudge(keep) {
      if (keep) jobDocument.getState().commit();
      else jobDocument.getState().cancel();
    },
  };
}
