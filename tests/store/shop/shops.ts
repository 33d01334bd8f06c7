/** The shop's side of a browser in memory: what is kept of the record, and the tabs that have it open. */
import { createShop, type ShopStore, type ShopSurroundings } from '../../../src/store/shop/createShop.ts';
import type { EarlierSettings } from '../../../src/store/shop/earlier.ts';
import type { Damaged, KeptShop } from '../../../src/store/storage/persistence.ts';
import { openBrowser, type Browser, type Tab } from '../memory.ts';

export interface ShopBrowser {
  readonly browser: Browser;
  /** As they lie there, sound or not. */
  copies: unknown[];
  readonly damaged: Damaged[];
  earlier: EarlierSettings;
  answers: readonly string[];
  /** While it is set, the storage refuses whatever is asked of it. */
  broken: boolean;
  writes: number;
  openTab(): Promise<ShopTab>;
}

export interface ShopTab extends Tab {
  readonly shop: ShopStore;
  /** What the storage says of itself. */
  readonly storage: { lost(): void; leaving(): Promise<void> };
}

export function openShopBrowser(): ShopBrowser {
  const listeners: { readonly tab: object; readonly heard: (text: string) => void }[] = [];
  const made: ShopBrowser = {
    browser: openBrowser(),
    copies: [],
    damaged: [],
    earlier: { tape: null, tolerances: null },
    answers: [],
    broken: false,
    writes: 0,
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
            return { copies: made.copies, isEven: made.copies.length < 2 };
          },
          async save(kept: KeptShop) {
            refuse();
            made.writes += 1;
            made.copies = [structuredClone(kept)];
          },
          setAside: async (damaged) => void made.damaged.push(damaged),
          watch: (watcher) => (storage = watcher),
        },
        now: () => made.browser.time,
        earlier: () => made.earlier,
        forgetEarlier: () => (made.earlier = { tape: null, tolerances: null }),
        answers: () => made.answers,
        keepAnswers: (answers) => (made.answers = answers),
        announce: (text) => listeners.forEach(({ tab: other, heard }) => other !== tab && heard(text)),
        listen: (heard) => void listeners.push({ tab, heard }),
      };
      await shop.start(surroundings);
      return { ...tab, shop, storage: storage! };
    },
  };
  return made;
}
