/**
 * When work is written: at the latest a moment after the first change that is not written yet, however many follow it. One
 * write is under way and one may wait, which then writes what is the latest. A write that failed is tried again with
 * growing waits, at each change, and when the page goes out of sight.
 */
import { troubleOf } from './persistence.ts';
import type { Saved, Trouble } from '../types.ts';

/** ms from the first unwritten change to its write. */
export const DELAY = 300;
/** ms from a failure to the next try; twice as long after each further one. */
export const RETRY = 1000;
export const LONGEST_RETRY = 30_000;
/** ms to wait after so many failures before this one. */
export const waitAfter = (failures: number): number => Math.min(LONGEST_RETRY, RETRY * 2 ** failures);

/** ms after which a write that is under way is called slow. */
export const SLOW = 5000;

export interface Writer {
  /** Something changed. */
  changed(): void;
  /** Writes now what is not written, even while a write of something older is under way. */
  flush(): Promise<void>;
  isWritten(): boolean;
  /** What was written is gone: it is written again, at once unless a failed write waits for its next try. */
  again(): void;
}

/**
 * `jot` puts down at once what is to be written, whether or not a write is under way: the answer to that may be long in
 * coming, on a page that is busy drawing what changes.
 *
 * `show` is called after each change and each write with how it stands, and why it failed; twice with the same, perhaps.
 */
export function createWriter(
  jot: () => void,
  write: () => Promise<void>,
  show: (saved: Saved, trouble: Trouble | null) => void,
): Writer {
  /** Counts the changes, so that an older write that ends late does not claim that all is saved. */
  let change = 0;
  /** The change up to which it is written, and up to which a write is begun. */
  let written = 0;
  let begun = 0;
  let underWay = 0;
  let last: Promise<void> = Promise.resolve();
  /** A change waited long enough while a write was under way. */
  let isDue = false;
  let failures = 0;
  let trouble: Trouble | null = null;
  let delay: ReturnType<typeof setTimeout> | null = null;
  /** When `delay` began. */
  let since = 0;
  let retry: ReturnType<typeof setTimeout> | null = null;

  function showState(): void {
    if (written === change) show('saved', null);
    else show(trouble === null ? 'saving' : 'failed', trouble);
  }

  function stopTimers(): void {
    if (delay !== null) clearTimeout(delay);
    if (retry !== null) clearTimeout(retry);
    delay = null;
    retry = null;
  }

  function due(): void {
    stopTimers();
    if (written === change) return;
    if (underWay === 0) return void writeNow();
    jot();
    isDue = true;
  }

  function soon(): void {
    if (delay === null) {
      since = performance.now();
      delay = setTimeout(due, DELAY);
    } else if (performance.now() - since >= DELAY) due(); // a page that is busy with what changes it lets timers wait
  }

  const writeNow = (): Promise<void> => (last = writeOnce());

  async function writeOnce(): Promise<void> {
    stopTimers();
    jot();
    isDue = false;
    const upTo = change;
    begun = upTo;
    underWay += 1;
    const slow = setTimeout(() => {
      trouble ??= 'slow';
      showState();
    }, SLOW);
    try {
      await write();
      written = Math.max(written, upTo);
      failures = 0;
      trouble = null;
    } catch (error) {
      // If something later was written meanwhile, nothing is missing.
      if (upTo > written) failed(error);
    }
    clearTimeout(slow);
    underWay -= 1;
    showState();
    if (written === change || underWay > 0) return;
    // What waited for this write goes now if this one went; else it is a change that is due a try of its own.
    if (trouble === null && (isDue || delay === null)) void writeNow();
    else if (isDue) soon();
  }

  function failed(error: unknown): void {
    trouble = troubleOf(error);
    begun = written;
    if (retry !== null) clearTimeout(retry);
    retry = setTimeout(due, waitAfter(failures));
    failures += 1;
  }

  return {
    changed() {
      change += 1;
      showState();
      soon();
    },
    async flush() {
      if (begun < change) await writeNow();
      else await last;
    },
    isWritten: () => written === change,
    again() {
      change += 1;
      showState();
      if (underWay === 0 && retry === null) void writeNow();
    },
  };
}
