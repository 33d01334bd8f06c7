/**
 * Work kept twice: in the first copy, which alone decides who may write and what is refused, and after each write also in
 * the second, so that either brings the work back when the other is gone. What the first does not take, or does not answer to, is
 * written to the second alone. Where there is no second copy, or it fails, the first does: what the first says is what the person
 * is shown.
 */
import type { FirstCopy } from './indexedDb.ts';
import {
  isLater,
  nextStamp,
  troubleOf,
  type Copy,
  type Jotted,
  type Persistence,
  type Stored,
  type Watcher,
} from './persistence.ts';
import type { SecondCopy } from './secondCopy.ts';

/** ms that the second copy is waited for. */
const PATIENCE = 5000;
/** ms that the first copy may take over a write until the second is written without it. */
export const LATE = 3000;

/** `most` documents are held in the second copy. */
export function twoCopies(first: FirstCopy, second: SecondCopy, most: number): Persistence {
  const watchers: Watcher[] = [];
  const later = trailing();
  /** What the first has not answered to yet, the latest of each slot. */
  const pending = new Map<string, Jotted>();
  /** The writes that the first takes too long over. */
  const late = new Set<object>();

  const writeBehind = (stored: Stored): void => later(stored.kept.slot, () => second.write(stored, most));

  function writeAlone({ kept, tab, seen }: Jotted): void {
    const stored = { kept, stamp: nextStamp(undefined, tab, seen) };
    later(kept.slot, () =>
      second.write(stored, most).then(
        () => say(true),
        () => say(false),
      ),
    );
  }

  const say = (isInSecond: boolean): void => {
    for (const watcher of watchers) watcher.isInSecond(isInSecond);
  };

  const inSecond = async (slot: string): Promise<readonly Stored[]> => {
    const stored = await second.read(slot);
    return stored === null ? [] : [stored];
  };

  const copyOf = (stored: Stored): Copy => ({
    found: stored,
    checked: { ok: true, value: stored },
    async setAside(damaged) {
      await first.keepDamaged(damaged);
      await second.remove(stored.kept.slot, stored.stamp);
    },
  });

  return {
    ...first,

    async slots() {
      const [those, others] = await both(first.slots(), second.slots());
      return [...new Set([...those, ...others])];
    },

    async copies(slot) {
      const [own, [other]] = await both(first.copies(slot), inSecond(slot));
      if (other === undefined) return own;
      const isSecondLater = own[0]?.checked.ok && isLater(other, own[0].checked.value);
      return isSecondLater ? [copyOf(other), ...own] : [...own, copyOf(other)];
    },

    watch(watcher) {
      first.watch(watcher);
      watchers.push(watcher);
    },

    async save(kept, tab, seen, limit) {
      const { slot } = kept;
      const before = pending.get(slot);
      if (before === undefined || before.kept.savedAt <= kept.savedAt) pending.set(slot, { kept, tab, seen });
      const write = {};
      const alone = (): void => writeAlone(pending.get(slot) ?? { kept, tab, seen });
      const timer = setTimeout(() => {
        late.add(write);
        alone();
      }, LATE);
      try {
        const stamp = await first.save(kept, tab, seen, limit);
        if (stamp !== null) writeBehind({ kept, stamp });
        // Another tab was first: what the second may have been given meanwhile gives way as well.
        else later(slot, () => second.remove(slot, nextStamp(undefined, tab, seen)));
        const last = pending.get(slot);
        if (last !== undefined && last.kept.savedAt <= kept.savedAt) pending.delete(slot);
        return stamp;
      } catch (error) {
        // The second alone is better than none; but what a newer program has taken over is not this page's to write.
        if (troubleOf(error) === 'newer') say(false);
        else alone();
        throw error;
      } finally {
        clearTimeout(timer);
        late.delete(write);
      }
    },

    jot(kept, tab, seen) {
      first.jot(kept, tab, seen);
      pending.set(kept.slot, { kept, tab, seen });
      if (late.size > 0) writeAlone({ kept, tab, seen });
    },

    async evenOut(opened) {
      const [those, others] = await Promise.all([first.slots(), second.slots()]);
      const newest = [...new Set([...those, ...others])].slice(0, most);
      for (const slot of newest) {
        if (slot !== opened && those.includes(slot) && others.includes(slot)) continue;
        const [[own], [other]] = await Promise.all([first.copies(slot), inSecond(slot)]);
        const stored = own?.checked.ok ? own.checked.value : undefined;
        if (stored && !(other && !isLater(stored, other))) await second.write(stored, most);
        if (other && !(stored && !isLater(other, stored))) await first.restore(other, most);
      }
    },
  };
}

/** What both hold. That one of them fails, or the second takes too long, counts as holding nothing as long as the other has something. */
async function both<A, B>(
  first: Promise<readonly A[]>,
  second: Promise<readonly B[]>,
): Promise<readonly [readonly A[], readonly B[]]> {
  const others = Promise.race([second, new Promise<never[]>((resolve) => setTimeout(resolve, PATIENCE, []))]).catch(
    () => [],
  );
  try {
    return [await first, await others];
  } catch (error) {
    if (troubleOf(error) === 'newer' || (await others).length === 0) throw error;
    return [[], await others];
  }
}

/** Does one after another; of several that wait for one slot the latest. A failure is made good by the next. */
function trailing(): (slot: string, task: () => Promise<void>) => void {
  const waiting = new Map<string, () => Promise<void>>();
  let isBusy = false;

  async function doAll(): Promise<void> {
    isBusy = true;
    for (const [slot, task] of waiting) {
      waiting.delete(slot);
      await task().catch(() => undefined);
    }
    isBusy = false;
  }

  return (slot, task) => {
    waiting.set(slot, task);
    if (!isBusy) void doAll();
  };
}
