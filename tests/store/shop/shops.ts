/** The shop's side of a browser in memory: what is kept of the record, and the tabs that have it open. */
import { createShop, type ShopStore, type ShopSurroundings } from '../../../src/store/shop/createShop.ts';
import type { EarlierSettings } from '../../../src/store/shop/earlier.ts';
import type { Damaged, KeptShop } from '../../../src/store/storage/persistence.ts';
import { openBrowser, type Browser, type Tab } from '../memory.ts';

export interface ShopBrowser {
  readonly browser: Browser;
  /** As they lie there, sound or not. */
  copies: unknown[];
  /** What was jotted down last and is not saved. */
  jotted: unknown[];
  readonly damaged: Damaged[];
  earlier: EarlierSettings;
  answers: readonly string[];
  /** While it is set, the storage refuses whatever is asked of it. */
  broken: boolean;
  /** While it is set, what is read waits for it. */
  reading: Promise<void> | null;
  /** While it is set, what is written waits for it. */
  pause: Promise<void> | null;
  writes: number;
  /** How what one tab announces comes to the others: at once, unless a test has it otherwise. */
  onTheWay: (tell: () => void) => void;
  openTab(): Promise<ShopTab>;
}

export interface ShopTab extends Tab {
  readonly shop: ShopStore;
  /** What the storage says of itself. */
  readonly storage: Parameters<ShopSurroundings['persistence']['watch']>[0];
}

export function openShopBrowser(): ShopBrowser {
  const listeners: { readonly tab: object; readonly heard: (kept: KeptShop) => void }[] = [];
  const made: ShopBrowser = {
    browser: openBrowser(),
    copies: [],
    jotted: [],
    damaged: [],
    earlier: { tape: null, tolerances: null },
    answers: [],
    broken: false,
    reading: null,
    pause: null,
    writes: 0,
    onTheWay: (tell) => tell(),
    async openTab() {
      const tab = await made.browser.openTab();
      const shop = createShop(tab.document);
      let storage: ShopTab['storage'] | null = null;
      const refuse = (): void => {
        if (made.broken) throw new Error('storage is off');
      };
      const surroundings: ShopSurroundings = {
        persistence: {
          async read() {
            refuse();
            await made.reading;
            return { copies: made.copies, jotted: made.jotted, isEven: made.copies.length < 2 };
          },
          jot: (jotted) => void (made.jotted = [jotted]),
          pageGoes: () => undefined,
          async save(next) {
            refuse();
            await made.pause;
            const kept = next(made.copies[0]);
            if (kept === null) return null;
            made.writes += 1;
            made.copies = [structuredClone(kept)];
            made.jotted = [];
            return kept;
          },
          setAside: async (damaged) => void made.damaged.push(damaged),
          watch: (watcher) => (storage = watcher),
        },
        now: () => made.browser.time,
        earlier: () => made.earlier,
        forgetEarlier: () => (made.earlier = { tape: null, tolerances: null }),
        answers: () => made.answers,
        keepAnswers: (answers) => (made.answers = answers),
        announce: (kept) =>
          listeners.forEach(({ tab: other, heard }) => other !== tab && made.onTheWay(() => heard(kept))),
        listen: (heard) => void listeners.push({ tab, heard }),
      };
      const started = shop.start(surroundings);
      if (made.reading === null) await started;
      return { ...tab, shop, storage: storage! };
    },
  };
  return made;
}
