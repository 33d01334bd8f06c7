/**
 * The shop record of this browser, beside the open job; how it is kept is keepShop.ts's. It follows the open job: pulls that are logged there go into its log, sticks that are sawn there come off its rack, and when a job is opened that differs from
 * it, the person is asked.
 */
import { createStore } from 'zustand/vanilla';
import type { StoreApi } from 'zustand/vanilla';
import type { Fault } from '../../core/job/fault.ts';
import { allThatDiffers, type Difference } from '../../core/shop/differences.ts';
import { given, taken } from '../../core/shop/exchange.ts';
import { followed, type Followed } from '../../core/shop/log.ts';
import { leftOffRack, rackAfter } from '../../core/shop/rack.ts';
import { parseShop } from '../../core/shop/parse.ts';
import { serialiseShop } from '../../core/shop/serialise.ts';
import { EMPTY_SHOP, type Shop } from '../../core/shop/types.ts';
import type { Job } from '../../core/job/types.ts';
import { offRackInWords } from '../../core/words/rack.ts';
import type { DocumentState, DocumentStore } from '../document/createDocument.ts';
import type { Notice, Saved, Trouble } from '../types.ts';
import { answered, openQuestions, stillOpen } from './asking.ts';
import { unfollowedNotice } from './notices.ts';
import { createShopKeeping, type ShopKeeping, type ShopKeepingSurroundings } from './keepShop.ts';

export interface ShopState {
  readonly shop: Shop;
  /** What stood there before a file or a job was put into it: for the way back. Not kept. */
  readonly before: Shop | null;
  readonly saved: Saved;
  readonly trouble: Trouble | null;
  readonly notice: Notice | null;
  /** Someone waits for what is kept to be read: a new job. */
  readonly awaited: boolean;
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
export interface ShopSurroundings extends ShopKeepingSurroundings {
  /** What was answered already; not worth more than a browser's setting. */
  answers(): readonly string[];
  keepAnswers(answers: readonly string[]): void;
}

export interface ShopStore extends StoreApi<ShopState> {
  start(surroundings: ShopSurroundings): Promise<void>;
  /** Writes at once what waits to be written. */
  flush(): Promise<void>;
  /** The same, as the last call before the page is gone. */
  pageGoes(): void;
  whenRead: ShopKeeping['whenRead'];
}

export function createShop(document: DocumentStore): ShopStore {
  let around: ShopSurroundings | null = null;
  /** What this page has put into the log. */
  let own: Followed['own'] = [];

  const keeping = createShopKeeping({
    shop: () => get().shop,
    show: (shop) => set({ shop, before: null, asked: stillOpen(shop, document.getState().job, get().asked) }),
    say: (notice) => set({ notice }),
    showSaved: (saved, trouble) => set({ saved, trouble }),
    showTrouble: (trouble) => set({ trouble }),
    wasRead: ask,
    showAwaited: (awaited) => set({ awaited }),
  });

  const store: StoreApi<ShopState> = createStore<ShopState>()(() => ({
    shop: EMPTY_SHOP,
    before: null,
    saved: 'saved',
    trouble: null,
    notice: null,
    awaited: false,
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
    keeping.changed();
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
      tell(putRead(after.shop));
    }
    if (next.job.sawn !== last.job.sawn) followSawn(next.job, last.job.sawn);
    if (get().asked.length > 0) set({ asked: stillOpen(get().shop, next.job, get().asked) });
  }

  function followSawn(job: Job, before: Job['sawn']): void {
    const { shop } = get();
    tell(putRead(rackAfter(shop, before, job)));
    const off = offRackInWords(leftOffRack(shop, before, job), job.lengthUnit);
    if (off !== null) set({ notice: { message: off, damaged: [] } });
  }

  /** That the record cannot follow the job: the job goes on. */
  function tell(faults: readonly Fault[]): void {
    if (faults.length > 0) set({ notice: unfollowedNotice(faults) });
  }

  async function start(surroundings: ShopSurroundings): Promise<void> {
    around = surroundings;
    document.subscribe(follow);
    await keeping.start(surroundings);
  }

  return Object.assign(store, {
    start,
    flush: keeping.flush,
    pageGoes: keeping.pageGoes,
    whenRead: keeping.whenRead,
  });
}
