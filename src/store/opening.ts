/** How another document takes the place of the open one: from a file, from nothing, the demo; and how a version comes back into it. */
import { emptyJob } from '../core/job/empty-job.ts';
import { sameData } from '../core/job/equal.ts';
import type { Job } from '../core/job/types.ts';
import { newHistory, type History } from '../core/session/history.ts';
import { isSameJob } from '../core/take-over/same-job.ts';
import { admitText } from './document/admit.ts';
import { undrawn, type Committed, type DocumentStore } from './document/createDocument.ts';
import type { EditorStore } from './editor/createEditor.ts';
import type { KeepingStore } from './keeping/createKeeping.ts';
import type { Version } from './types.ts';

export interface Opening {
  /** Opens a job file's text. On faults the open job stays, and the editor's `refused` says why. */
  open(fileName: string, text: string): void;
  /** The same of a file that may be another state of the open job: then it waits in the editor's `otherState` for a person to say what is to be done with it. */
  bring(fileName: string, text: string): void;
  /**
   * A job in which nothing is drawn yet: an empty one, or `begun` with what the shop has. Like `open`, it has a history and a place of
   * its own; the job before it stands in the earlier versions.
   */
  newJob(begun?: Job): void;
  /**
   * The same with what has to be waited for; answers whether it was begun. It is not where another document was opened meanwhile, nor
   * while one is waited for already.
   */
  newJobFrom(begun: () => Promise<Job>): Promise<boolean>;
  openDemo(): Promise<void>;
  /** Brings a version back: as one undo step into the document that it is of; of another it is opened, with a history of its own. */
  restore(version: Version): void;
}

export function createOpening(document: DocumentStore, editor: EditorStore, keeping: KeepingStore): Opening {
  /** How many documents were opened here. */
  let taken = 0;
  let isWaiting = false;

  function open(fileName: string, text: string, isAsked = false): void {
    const admitted = admitText(text);
    if (!admitted.ok) return editor.getState().refuse(fileName, admitted.faults);
    const { job, derived } = admitted;
    if (isAsked && isOtherState(job)) return editor.getState().askOf({ fileName, job });
    takeUp({ history: newHistory(job), derived }, fileName);
  }

  /** Of the very same job nothing could be taken over. */
  function isOtherState(other: Job): boolean {
    const { ready, job } = document.getState();
    return ready && isSameJob(job, other) && !sameData(job, other);
  }

  /** Only a job in which nothing was ever done gives up its slot to another. */
  function takeUp(next: Committed, fileName: string, station = editor.getState().station): void {
    taken += 1;
    document.getState().commit();
    const { committed, replace } = document.getState();
    if (keeping.getState().behind || !isUntouched(committed.history)) keeping.leave();
    replace(next, fileName);
    editor.getState().setStation(station);
    keeping.changed();
    void keeping.flush(); // also what is left of the other
  }

  const newJob = (begun = emptyJob(document.getState().job.lengthUnit)): void => takeUp(undrawn(begun), '', 'survey');

  return {
    open: (fileName, text) => open(fileName, text),
    bring: (fileName, text) => open(fileName, text, true),
    newJob,
    async newJobFrom(begun) {
      if (isWaiting) return false;
      isWaiting = true;
      const before = taken;
      try {
        const job = await begun();
        if (taken !== before) return false;
        newJob(job);
        return true;
      } finally {
        isWaiting = false;
      }
    },
    async openDemo() {
      const text = await keeping.fetchDemo();
      if (text !== null) open('demo.cagewright.json', text);
    },
    restore({ name, text, isOther }) {
      const admitted = admitText(text);
      if (!admitted.ok) return editor.getState().refuse(name, admitted.faults);
      if (isOther) return takeUp({ history: newHistory(admitted.job), derived: admitted.derived }, '');
      document.getState().edit('Bring back a version', () => admitted.job);
      editor.getState().lookAtAll();
    },
  };
}

const isUntouched = ({ job, past, future }: History): boolean =>
  past.length + future.length + job.points.length + job.nodes.length + job.members.length === 0;
