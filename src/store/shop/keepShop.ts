/**
 * The shop record between visits and among tabs: brought out when the page starts, saved when it changes, heard of by the other tabs.
 * It is written onto what lies there: what another tab has changed since this one read, wrote or heard of it is put together with
 * what was changed here, so that neither is lost.
 */
import { sameData } from '../../core/job/equal.ts';
import { mergeShops } from '../../core/shop/merge.ts';
import { isShopOfLaterProgram, parseShop } from '../../core/shop/parse.ts';
import { serialiseShop } from '../../core/shop/serialise.ts';
import { EMPTY_SHOP, type Shop } from '../../core/shop/types.ts';
import { troubleOf, type KeptShop } from '../storage/persistence.ts';
import { checkKeptShop } from '../storage/records.ts';
import type { ShopPersistence } from '../storage/shopPersistence.ts';
import { createWriter, waitAfter } from '../storage/writer.ts';
import type { Notice, Saved, Trouble } from '../types.ts';
import { withEarlier, type EarlierSettings } from './earlier.ts';
import { findShop } from './find.ts';
import { damagedShopNotice, missedShopNotice, newerShopNotice } from './notices.ts';

/** What it is given from outside. */
export interface ShopKeepingSurroundings {
  readonly persistence: ShopPersistence;
  now(): number;
  /** What earlier builds kept apart from it, and that it is not needed any more. */
  earlier(): EarlierSettings;
  forgetEarlier(): void;
  /** To the other tabs and from them. */
  announce(kept: KeptShop): void;
  listen(heard: (kept: KeptShop) => void): void;
}

export interface ShopHost {
  shop(): Shop;
  /** Shows a record that has come from outside. */
  show(shop: Shop): void;
  say(notice: Notice): void;
  showSaved(saved: Saved, trouble: Trouble | null): void;
  showTrouble(trouble: Trouble | null): void;
  /** What is kept was read, and is shown. */
  wasRead(): void;
  /** Whether someone waits for it to be read. */
  showAwaited(isAwaited: boolean): void;
}

export interface ShopKeeping {
  start(surroundings: ShopKeepingSurroundings): Promise<void>;
  changed(): void;
  flush(): Promise<void>;
  /** The same, as the last call before the page is gone. */
  pageGoes(): void;
  /**
   * Once what is kept was read; at once where the storage cannot be reached or nothing is started, and after a few seconds in any
   * case. Answers whether it was read.
   */
  whenRead(): Promise<boolean>;
}

/** ms that whoever wants the record waits for it. */
const PATIENCE = 5000;

export function createShopKeeping(host: ShopHost): ShopKeeping {
  let around: ShopKeepingSurroundings | null = null;
  /** Whether what is kept was read: before that nothing is written, and after it found a newer program's record neither. */
  let isOurs = false;
  let isRead = false;
  let firstLook: Promise<void> = Promise.resolve();
  /** The storage cannot be reached just now, and who is to be told as soon as that is known. */
  let isStuck = false;
  let waiting: (() => void)[] = [];
  /** Why what is kept was not read yet, and whether something was changed before it was. */
  let looking: Trouble | null = null;
  let isUnread = false;
  /** What lies there as far as this page knows: what it has read, written or heard of last. What differs from it is this page's own. */
  let base = EMPTY_SHOP;
  /** When that was saved: the next is later, whatever the clock has been set to. */
  let savedAt = 0;

  const writer = createWriter(
    () => undefined, // each change is jotted down at once
    write,
    host.showSaved,
  );

  async function write(): Promise<void> {
    if (around === null || !isOurs) return;
    const { persistence, now, forgetEarlier, announce } = around;
    const own = host.shop();
    const written = await persistence.save((found) => {
      const checked = checkKeptShop(found);
      const there = checked.ok ? checked.value : { text: '', savedAt: 0 };
      if (isShopOfLaterProgram(there.text)) return null;
      const isNews = there.savedAt > savedAt; // what is not was read, heard of or written here
      const parsed = parseShop(there.text);
      const text = serialiseShop(isNews && parsed.ok ? mergeShops(base, own, parsed.shop) : own);
      return { text, savedAt: Math.max(now(), savedAt + 1, there.savedAt + 1) };
    });
    if (written === null) return leaveToNewer();
    forgetEarlier();
    announce(written);
    const parsed = parseShop(written.text);
    if (parsed.ok) takeOver(own, parsed.shop, written.savedAt);
  }

  /** What lies there now is `next`, and of this page's record `known` is in it. */
  function takeOver(known: Shop, next: Shop, at: number): void {
    if (at <= savedAt) return; // heard late: later ones are known
    savedAt = at;
    base = next;
    const shown = mergeShops(known, host.shop(), next);
    if (!sameData(shown, host.shop())) host.show(shown);
  }

  function leaveToNewer(): void {
    isOurs = false; // what a newer program has written is not this page's to write over
    host.say(newerShopNotice);
  }

  function hear({ text, savedAt: at }: KeptShop): void {
    if (!isOurs) return;
    if (isShopOfLaterProgram(text)) return leaveToNewer();
    const parsed = parseShop(text);
    if (parsed.ok) takeOver(base, parsed.shop, at);
  }

  /**
   * Written soon; and put down at once, against what it was made of, since the page may be gone the next moment. Before what is kept was
   * read it can only be said that it is not saved.
   */
  function changed(): void {
    if (around === null) return;
    if (!isOurs) {
      isUnread = !isRead;
      return showUnread();
    }
    around.persistence.jot({ base: serialiseShop(base), own: serialiseShop(host.shop()) });
    writer.changed();
  }

  function showUnread(): void {
    if (isUnread) host.showSaved(looking === null ? 'saving' : 'failed', looking);
    else host.showTrouble(looking);
  }

  /** Again with growing waits while the storage cannot be reached; until then the record is this page's alone, and is not written. */
  async function look(surroundings: ShopKeepingSurroundings, failures: number): Promise<void> {
    const { persistence, now, earlier } = surroundings;
    try {
      const { copies, jotted, isEven } = await persistence.read();
      const { shop, changes, damaged, isNewer, ...found } = findShop(copies, jotted, now());
      await Promise.all(damaged.map((one) => persistence.setAside(one).catch(() => undefined)));
      const there = changes.reduce<Shop | null>(
        (onto, change) => mergeShops(change.base, change.own, onto ?? EMPTY_SHOP),
        shop,
      );
      const meanwhile = host.shop();
      const merged = there === null ? meanwhile : mergeShops(base, meanwhile, there);
      const next = withEarlier(merged, earlier());
      savedAt = found.savedAt;
      base = shop ?? EMPTY_SHOP;
      isOurs = !isNewer;
      isRead = true;
      if (isNewer) host.say(newerShopNotice);
      else if (damaged.length > 0) host.say(damagedShopNotice(damaged, shop !== null));
      else if (shop !== null && merged !== there) host.say(missedShopNotice);
      looking = null;
      isUnread = false;
      host.showSaved('saved', null); // or is to be, below
      host.show(next);
      host.wasRead();
      // What lay in one place alone, or damaged in one, or was jotted down, is written to both.
      const isAsFound = next === shop && isEven && damaged.length === 0 && jotted.length === 0;
      if (isOurs && next !== EMPTY_SHOP && !isAsFound) changed();
    } catch (error) {
      if (failures === 0) {
        base = withEarlier(base, earlier());
        host.show(withEarlier(host.shop(), earlier()));
      }
      looking = troubleOf(error);
      showUnread();
      if (looking !== 'newer') setTimeout(() => void look(surroundings, failures + 1), waitAfter(failures));
    }
  }

  return {
    async start(surroundings) {
      around = surroundings;
      surroundings.persistence.watch({
        stands(trouble) {
          isStuck = trouble !== null;
          if (!isRead) {
            looking = trouble;
            showUnread();
          }
          if (!isStuck) return;
          for (const tell of waiting) tell();
          waiting = [];
        },
        lost() {
          if (isOurs && host.shop() !== EMPTY_SHOP) writer.again();
        },
        leaving: writer.flush,
      });
      surroundings.listen(hear);
      firstLook = look(surroundings, 0);
      await firstLook;
    },
    changed,
    flush: writer.flush,
    pageGoes() {
      void writer.flush();
      around?.persistence.pageGoes();
    },
    async whenRead() {
      if (isRead || isStuck || around === null) return isRead;
      const longEnough = new Promise<void>((resolve) => {
        waiting.push(resolve);
        setTimeout(resolve, PATIENCE);
      });
      host.showAwaited(true);
      await Promise.race([firstLook, longEnough]);
      host.showAwaited(false);
      return isRead;
    },
  };
}
