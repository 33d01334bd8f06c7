/**
 * What a tab puts down without waiting for an answer: sent to the database with its commit in one go, so that it arrives
 * though the page is so busy that it hears nothing for seconds. No other transaction has this store in its scope, or it would
 * have to wait for that one. What has not arrived when the page goes is put where it is at once (last-words.ts).
 */
import type { Chunks } from './chunks.ts';
import type { Connection } from './connection.ts';
import type { LastWords } from './last-words.ts';
import type { Packed, Packing } from './packed.ts';
import type { Jotted } from './persistence.ts';

export interface Jottings {
  /** How many there were so far. */
  readonly count: number;
  /** Of its history's chunks those that `isSaved` knows are left out. */
  jot(jotted: Jotted, isSaved: (chunk: string) => boolean): void;
  /** Lets go of those of the slot up to the how-manieth: they are saved. */
  drop(tab: string, slot: string, upTo: number): void;
  /** The page is going. */
  pageGoes(): void;
  /**
   * Hands on all that lie there, of all tabs, in their order, and lets go of each that is done; one whose task fails stays. Answers
   * whether all are done. Rejects where they cannot be reached.
   */
  each(task: (found: unknown) => Promise<void>): Promise<boolean>;
}

/** How many may be on their way without an answer: beyond that the latest of each slot waits, so that a database that hangs fills no memory. */
const MOST_UNANSWERED = 40;

/** Lets go of those up to the how-manieth and, where there is one, puts down the next. */
interface Sent {
  readonly tab: string;
  readonly slot: string;
  readonly upTo: number;
  readonly jotted: (Packed<Jotted> & { readonly chunks: Chunks }) | null;
}

/** What was put down and has not arrived, as far as this page knows. */
interface OnItsWay {
  readonly nth: number;
  readonly whole: Jotted;
}

export function createJottings(run: Connection['run'], { pack }: Packing, lastWords: LastWords): Jottings {
  let count = 0;
  /** The latest of each slot. */
  const onTheirWay = new Map<string, OnItsWay>();
  /** What is not sent yet, the latest of each slot. */
  const waiting = new Map<string, Sent>();
  let unanswered = 0;

  function send(sent: Sent): void {
    const before = waiting.get(sent.slot);
    if (before === undefined || lastOf(before) <= lastOf(sent)) waiting.set(sent.slot, sent);
    if (unanswered < MOST_UNANSWERED) void sendAll();
  }

  /** All that waits by the time the database is open. A failure is said by no one here: what ails the storage, a save says too. */
  async function sendAll(): Promise<void> {
    unanswered += 1;
    let areSent = false;
    await run(async (database) => {
      if (waiting.size === 0) return;
      const transaction = database.transaction('jotted', 'readwrite');
      const done: Promise<unknown>[] = [transaction.done];
      const sent = [...waiting.values()];
      for (const { tab, slot, upTo, jotted } of sent) {
        done.push(transaction.store.delete(IDBKeyRange.bound([tab, slot, 0], [tab, slot, upTo])));
        if (jotted !== null) done.push(transaction.store.put(jotted, [tab, slot, upTo + 1]));
      }
      waiting.clear();
      transaction.commit?.(); // the oldest browsers do it themselves, later
      await Promise.all(done);
      for (const each of sent) arrived(each.slot, lastOf(each));
    }).then(
      () => (areSent = true),
      () => undefined, // what waits goes with the next
    );
    const wasNoRoom = unanswered === MOST_UNANSWERED;
    unanswered -= 1;
    if (areSent && wasNoRoom && waiting.size > 0) void sendAll();
  }

  function arrived(slot: string, upTo: number): void {
    const latest = onTheirWay.get(slot);
    if (latest === undefined || latest.nth > upTo) return;
    onTheirWay.delete(slot);
    lastWords.forget(nameOf(latest)); // the page did not go after all
  }

  return {
    get count() {
      return count;
    },
    jot(jotted, isSaved) {
      const { slot } = jotted.kept;
      const { document, chunks } = pack(jotted);
      const news = new Map([...chunks].filter(([name]) => !isSaved(name)));
      send({ tab: jotted.tab, slot, upTo: count, jotted: { ...document, chunks: news } });
      count += 1;
      onTheirWay.set(slot, { nth: count, whole: jotted });
    },
    drop(tab, slot, upTo) {
      arrived(slot, upTo);
      send({ tab, slot, upTo, jotted: null });
    },
    pageGoes() {
      for (const one of onTheirWay.values()) lastWords.put(nameOf(one), one.whole);
    },
    async each(task) {
      let areAllDone = true;
      for (const key of await run((database) => database.getAllKeys('jotted'))) {
        const found: unknown = await run((database) => database.get('jotted', key));
        if (found === undefined) continue; // its tab has saved it since
        try {
          await task(found);
          await run((database) => database.delete('jotted', key));
        } catch {
          areAllDone = false;
        }
      }
      for (const [name, found] of lastWords.found()) {
        try {
          await task(found);
          lastWords.forget(name);
        } catch {
          areAllDone = false;
        }
      }
      return areAllDone;
    },
  };
}

/** The last one that this says something of. */
const lastOf = ({ upTo, jotted }: Sent): number => (jotted === null ? upTo : upTo + 1);

/** A later one of a slot is put in the place of the one before. */
const nameOf = ({ whole }: OnItsWay): string => `${whole.tab} ${whole.kept.slot}`;
