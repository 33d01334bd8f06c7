/**
 * What a tab puts down without waiting for an answer: sent to the database with its commit in one go, so that it arrives
 * though the page is gone a moment later, or so busy that it hears nothing for seconds. No other transaction has this store
 * in its scope, or it would have to wait for that one.
 */
import type { Connection } from './connection.ts';
import type { Jotted } from './persistence.ts';

export interface Jottings {
  /** How many there were so far. */
  readonly count: number;
  jot(jotted: Jotted): void;
  /** Lets go of those of the slot up to the how-manieth: they are saved. */
  drop(tab: string, slot: string, upTo: number): void;
  /** Hands on all that lie there, of all tabs, in their order; lets go of each once that is done. Rejects if it cannot be. */
  each(task: (found: unknown) => Promise<void>): Promise<void>;
}

export function createJottings(run: Connection['run']): Jottings {
  let count = 0;

  /** Nobody hears of a failure: what ails the storage, a save says too. */
  function send(tab: string, slot: string, upTo: number, jotted: Jotted | null): void {
    run(async (database) => {
      const transaction = database.transaction('jotted', 'readwrite');
      const done: Promise<unknown>[] = [transaction.done];
      done.push(transaction.store.delete(IDBKeyRange.bound([tab, slot, 0], [tab, slot, upTo])));
      if (jotted !== null) done.push(transaction.store.put(jotted, [tab, slot, upTo + 1]));
      transaction.commit?.(); // the oldest browsers do it themselves, later
      await Promise.all(done);
    }).catch(() => undefined);
  }

  return {
    get count() {
      return count;
    },
    jot(jotted) {
      send(jotted.tab, jotted.kept.slot, count, jotted);
      count += 1;
    },
    drop: (tab, slot, upTo) => send(tab, slot, upTo, null),
    async each(task) {
      const keys = await run((database) => database.getAllKeys('jotted'));
      for (const key of keys) {
        await task(await run((database) => database.get('jotted', key)));
        await run((database) => database.delete('jotted', key));
      }
    },
  };
}
