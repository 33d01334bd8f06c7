/** What is kept of the open document. */
import { serialiseJob } from '../../core/job/serialise.ts';
import { keptHistory } from '../../core/session/kept.ts';
import { historyToKeep, type DocumentState } from '../document/createDocument.ts';
import type { Kept } from '../storage/persistence.ts';
import type { Station } from '../types.ts';

/** Steps kept each way for the next visit; undo in the open session has no end. */
const KEPT_STEPS = 2000;

export function toKeep(document: DocumentState, station: Station): Omit<Kept, 'slot' | 'savedAt'> {
  const history = historyToKeep(document);
  return {
    name: history.job.name,
    text: serialiseJob(history.job),
    history: keptHistory(history, KEPT_STEPS),
    fileName: document.fileName,
    station,
  };
}
