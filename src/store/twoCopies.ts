/**
 * Work kept twice: in the first copy, which alone decides who may write and what is refused, and after each write also in
 * the second, so that either brings the work back when the other is gone. Where there is no second copy, or it fails, the
 * first does: what the first says is what the person is shown.
 */
import type { FirstCopy } from './indexedDb.ts';
import { isLater, nextStamp, troubleOf, type Copy, type Persistence, type Stored } from './persistence.ts';
import type { SecondCopy } from './secondCopy.ts';

/** ms that the second copy is waited for. */
const PATIENCE = 5000;

/** `most` documents are held in the second copy. */
export function twoCopies(first: FirstCopy, second: SecondCopy, most: number): Persistence {
  const writeBehind = trailing((stored) => second.write(stored, most));

  const inSecond = async (slot: string): Promise<readonly Stored[]> => {
    const stored = await second.read(slot);
    return stored === null ? [] : [stored];
  };

  const copyOf = (stored: Stored): Copy => ({
    found: stored,
    checked: { ok: true, value: stored },
    async setAside(damaged) {
      await first.keepDamaged(damaged);
      await second.remove(stored.kept.slot);
    },
  });

  return {
    ...first,

    async slots() {
      const [those, others] = await both(first.slots(), second.slots());
      return [...new Set([...those, ...others])];
    },

    async copies(slot) {
      const [[own], [other]] = await both(first.copies(slot), inSecond(slot));
      const copies = [own, other && copyOf(other)].filter((copy) => copy !== undefined);
      const isSecondLater = other && own?.checked.ok && isLater(other, own.checked.value);
      return isSecondLater ? copies.toReversed() : copies;
    },

    async save(kept, tab, seen, limit) {
      try {
        const stamp = await first.save(kept, tab, seen, limit);
        if (stamp !== null) writeBehind({ kept, stamp });
        return stamp;
      } catch (error) {
        // The second alone is better than none; but what a newer program has taken over is not this page's to write.
        if (troubleOf(error) !== 'newer') writeBehind({ kept, stamp: nextStamp(undefined, tab, seen) });
        throw error;
      }
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

/** Writes one after another; of several that wait for one slot the latest. A failure is made good by the next. */
function trailing(write: (stored: Stored) => Promise<void>): (stored: Stored) => void {
  const waiting = new Map<string, Stored>();
  let isWriting = false;

  async function writeAll(): Promise<void> {
    isWriting = true;
    for (const [slot, stored] of waiting) {
      waiting.delete(slot);
      await write(stored).catch(() => undefined);
    }
    isWriting = false;
  }

  return (stored) => {
    waiting.set(stored.kept.slot, stored);
    if (!isWriting) void writeAll();
  };
}
