/**
 * The shop record of this browser, beside the open job: brought out when the page starts, saved when it changes, heard of by the
 * other tabs. It follows the open job: pulls that are logged there go into its log, and when a job is opened that differs from
 * it, the person is asked.
 */
import { createStore } from 'zustand/vanilla';
import type { StoreApi } from 'zustand/vanilla';
import type { Fault } from '../../core/job/fault.ts';
import { allThatDiffers, type Difference } from '../../core/shop/differences.ts';
import { given, taken } from '../../core/shop/exchange.ts';
import { followed, type Followed } from '../../core/shop/log.ts';
import { isShopOfLaterProgram, parseShop } from '../../core/shop/parse.ts';
import { serialiseShop } from '../../core/shop/serialise.ts';
import { EMPTY_SHOP, type Shop } from '../../core/shop/types.ts';
import type { DocumentState, DocumentStore } from '../document/createDocument.ts';
import { damagedShopNotice, missedShopNotice, newerShopNotice } from './notices.ts';
import { troubleOf } from '../storage/persistence.ts';
import type { Notice, Saved, Trouble } from '../types.ts';
import { createWriter, waitAfter } from '../storage/writer.ts';
import { answered, openQuestions, stillOpen } from './asking.ts';
import { withEarlier, type EarlierSettings } from './earlier.ts';
import { findShop } from './find.ts';
import type { ShopPersistence } from '../storage/shopPersistence.ts';

export interface ShopState {
  readonly shop: Shop;
  /** What stood there before a file or a job was put into it: for the way back. Not kept. */
  readonly before: Shop | null;
  readonly saved: Saved;
  readonly trouble: Trouble | null;
  readonly notice: Notice | null;
  /** Where it differs from the job that was opened last, until the person has answered. */
  readonly asked: readonly Difference[];
  /** From a field or a choice. Answers what is wrong with what comes of it, and then nothing changes; so do the others. */
  change(change: (shop: Shop) => Shop): readonly Fault[];
  /** The same, with a way back. */
  replace(change: (shop: Shop) => Shop): readonly Fault[];
  /** Puts a file's record in its place. */
  open(text: string): readonly Fault[];
  text(): string;
  /** Puts into it all that the open job has and it has not, or has otherwise. */
  takeFromJob(): readonly Fault[];
  goBack(): void;
  /** The three answers. The first is an edit of the job, and may be refused like any. */
  takeShops(): readonly Fault[];
  keepJobs(): void;
  giveJobs(): readonly Fault[];
  dismissNotice(): void;
}

/** What it is given from outside. In a browser: browser.ts. */
export interface ShopSurroundings {
  readonly persistence: ShopPersistence;
  now(): number;
  /** What earlier builds kept apart from it, and that it is not needed any more. */
  earlier(): EarlierSettings;
  forgetEarlier(): void;
  /** What was answered already; not worth more than a browser's setting. */
  answers(): readonly string[];
  keepAnswers(answers: readonly string[]): void;
  /** The text, to the other tabs and from them. */
  announce(text: string): void;
  listen(heard: (text: string) => void): void;
}

export interface ShopStore extends StoreApi<ShopState> {
  start(surroundings: ShopSurroundings): Promise<void>;
  /** Writes at once what waits to be written. */
  flush(): Promise<void>;
}

export function createShop(document: DocumentStore): ShopStore {
  let around: ShopSurroundings | null = null;
  /** Whether what is kept was read: before that nothing is written, and after it found a newer program's record neither. */
  let isOurs = false;
  /** Of the last record that was read or written: the next is later, whatever the clock has been set to. */
  let savedAt = 0;
  /** What this page has put into the log. */
  let own: Followed['own'] = [];

  const writer = createWriter(
    () => undefined, // it is small: what is lost with a page that ends is less than a second of it
    async () => {
      if (around === null) return;
      const text = serialiseShop(get().shop);
      savedAt = Math.max(around.now(), savedAt + 1);
      await around.persistence.save({ text, savedAt });
      around.forgetEarlier();
      around.announce(text);
    },
    (saved, trouble) => set({ saved, trouble }),
  );

  const store: StoreApi<ShopState> = createStore<ShopState>()(() => ({
    shop: EMPTY_SHOP,
    before: null,
    saved: 'saved',
    trouble: null,
    notice: null,
    asked: [],
    change: (change) => putRead(change(get().shop)),
    replace: (change) => putRead(change(get().shop), { before: get().shop }),
    open(text) {
      const parsed = parseShop(text);
      if (!parsed.ok) return parsed.faults;
      put(parsed.shop, { before: get().shop });
      return [];
    },
    text: () => serialiseShop(get().shop),
    takeFromJob() {
      const { job } = document.getState();
      return get().replace((shop) => given(shop, job, allThatDiffers(shop, job)));
    },
    goBack() {
      const { before, shop } = get();
      if (before !== null) put(before, { before: shop });
    },
    takeShops() {
      const { shop } = get();
      const open = stillOpen(shop, document.getState().job, get().asked);
      const faults = document.getState().edit('Use the shop’s', (job) => taken(job, shop, open));
      if (faults.length === 0) answer();
      return faults;
    },
    keepJobs: answer,
    giveJobs() {
      const { asked, replace } = get();
      const { job } = document.getState();
      const faults = replace((shop) => given(shop, job, stillOpen(shop, job, asked)));
      if (faults.length === 0) answer();
      return faults;
    },
    dismissNotice: () => set({ notice: null }),
  }));
  const get = store.getState;
  const set = (change: Partial<ShopState>): void => store.setState(change);

  function put(shop: Shop, also: Partial<ShopState> = {}): void {
    if (shop === get().shop) return;
    // The way back leads to what stood there just before, never past what was logged or changed since.
    set({ shop, before: null, asked: stillOpen(shop, document.getState().job, get().asked), ...also });
    if (isOurs) writer.changed();
  }

  /** Through the door for files, like a job: what is shown can be read again. */
  function putRead(shop: Shop, also: Partial<ShopState> = {}): readonly Fault[] {
    if (shop === get().shop) return [];
    const parsed = parseShop(serialiseShop(shop));
    if (!parsed.ok) return parsed.faults;
    put(parsed.shop, also);
    return [];
  }

  /** What is left of the questions is as the person wants it. */
  function answer(): void {
    const { shop, asked } = get();
    const { job } = document.getState();
    if (around !== null) around.keepAnswers(answered(around.answers(), job, stillOpen(shop, job, asked)));
    set({ asked: [] });
  }

  function ask(): void {
    const { ready, job } = document.getState();
    if (around !== null && ready) set({ asked: openQuestions(get().shop, job, around.answers()) });
  }

  function follow(next: DocumentState, last: DocumentState): void {
    if (next.opened !== last.opened) return ask();
    if (next.job === last.job || next.gesture.state !== 'idle') return;
    if (next.job.pulls !== last.job.pulls) {
      const after = followed({ shop: get().shop, own }, last.job.pulls, next.job);
      own = after.own;
      putRead(after.shop);
    }
    if (get().asked.length > 0) set({ asked: stillOpen(get().shop, next.job, get().asked) });
  }

  /** Again with growing waits while the storage cannot be reached; until then the record is this page's alone, and is not written. */
  async function look(surroundings: ShopSurroundings, failures: number): Promise<void> {
    const { persistence, now, earlier } = surroundings;
    try {
      const { copies, isEven } = await persistence.read();
      const { shop, damaged, isNewer, ...found } = findShop(copies, now());
      savedAt = found.savedAt;
      await Promise.all(damaged.map((one) => persistence.setAside(one).catch(() => undefined)));
      const meanwhile = get().shop;
      isOurs = !isNewer;
      const next = withEarlier(shop ?? meanwhile, earlier());
      const isMissed = shop !== null && meanwhile !== EMPTY_SHOP;
      if (isNewer) set({ notice: newerShopNotice });
      else if (damaged.length > 0) set({ notice: damagedShopNotice(damaged, shop !== null) });
      else if (isMissed) set({ notice: missedShopNotice });
      set({ shop: next, trouble: null });
      // What lay in one place alone, or damaged in one, is written to both.
      if (isOurs && next !== EMPTY_SHOP && (next !== shop || !isEven || damaged.length > 0)) writer.changed();
      ask();
    } catch (error) {
      if (failures === 0) set({ shop: withEarlier(get().shop, earlier()) });
      set({ trouble: troubleOf(error) });
      if (troubleOf(error) !== 'newer') setTimeout(() => void look(surroundings, failures + 1), waitAfter(failures));
    }
  }

  function hear(text: string): void {
    if (isOurs && isShopOfLaterProgram(text)) {
      isOurs = false; // what a newer program has written is not this page's to write over
      set({ notice: newerShopNotice });
    }
    const parsed = parseShop(text);
    if (!isOurs || !parsed.ok) return;
    set({ shop: parsed.shop, before: null, asked: stillOpen(parsed.shop, document.getState().job, get().asked) });
  }

  async function start(surroundings: ShopSurroundings): Promise<void> {
    around = surroundings;
    surroundings.persistence.watch({
      lost() {
        if (isOurs && get().shop !== EMPTY_SHOP) writer.again();
      },
      leaving: writer.flush,
    });
    surroundings.listen(hear);
    document.subscribe(follow);
    await look(surroundings, 0);
  }

  return Object.assign(store, { start, flush: writer.flush });
}
