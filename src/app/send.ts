/**
 * The job file handed to the platform's share sheet: to the telephone in the next room, with no network between. Save is there where a
 * platform has none.
 */
import { fileNameFor } from '../exports/shared/file-name.ts';
import { editor, jobDocument } from '../store/page.ts';

/** As what it goes. Some platforms let no JSON pass, whatever they say when they are asked; text every one that shares files at all. */
const SORTS = [
  { ending: 'cagewright.json', type: 'application/json' },
  { ending: 'cagewright.json', type: 'text/plain' },
  { ending: 'cagewright.txt', type: 'text/plain' },
] as const;

/** So many of the sorts this platform has turned away: it is not offered them again. */
let turnedAway = 0;

function fileOf(sort: (typeof SORTS)[number], jobName: string, text: string): File | null {
  const file = new File([text], fileNameFor(jobName, sort.ending), { type: sort.type });
  return 'canShare' in navigator && navigator.canShare({ files: [file] }) ? file : null;
}

/** The next that the platform says it takes; it is asked with a name and a sort, not with what is in it. */
const nextSort = (): number => SORTS.findIndex((sort, i) => i >= turnedAway && fileOf(sort, 'job', '{}') !== null);

/** Whether this platform has a share sheet that takes the job's file. */
export const canSend = (): boolean => nextSort() >= 0;

/** Opens the share sheet with the job as it stands. That a person leaves it is no failure; any other is said, with what to do. */
export async function sendJob(): Promise<void> {
  const { ready, job, file } = jobDocument.getState();
  const at = nextSort();
  if (!ready || at < 0) return;
  const shared = fileOf(SORTS[at]!, job.name, file().text);
  if (shared === null) return say(NOT_TAKEN);
  try {
    await navigator.share({ files: [shared] });
  } catch (error) {
    const { name, message } = error as DOMException;
    if (name === 'AbortError') return;
    if (name === 'InvalidStateError') return say('The share sheet is open already, or was not closed. Try again.');
    turnedAway = at + 1;
    if (canSend())
      return say(
        `${shared.name} was not let pass as it is. Press “Send the job” again: it then goes as plain text, which opens here all the same.`,
      );
    say(`${NOT_TAKEN} It says: ${message}`);
    turnedAway = 0;
  }
}

const NOT_TAKEN = 'This device does not pass the job file on. Save it, and send it from where it was saved.';

const say = (message: string): void => editor.getState().say({ message, damaged: [] });
