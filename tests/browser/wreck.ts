/** Makes the browser's own stores fail for a page that runs the program, and hears what the page says of it. */
import type { Locator, Page } from '@playwright/test';

/** How a write to the database fails: with an error of that name at once, or with its whole transaction. */
export const FAILURES = ['QuotaExceededError', 'UnknownError', 'InvalidStateError', 'transaction'] as const;
export type Failing = (typeof FAILURES)[number];

declare global {
  interface Window {
    wreck: {
      /** How the next writes fail, and how many of them; of one that is to be tried again only those of the document count. */
      failing: { readonly how: Failing; left: number } | null;
      readonly opened: IDBDatabase[];
      /** All that stood in the strip, also for a moment. */
      said: string;
    };
  }
}

/** To be called before the page is loaded. */
export async function prepare(page: Page): Promise<void> {
  await page.addInitScript(() => {
    window.wreck = { failing: null, opened: [], said: '' };
    const { wreck } = window;
    const open = IDBFactory.prototype.open;
    IDBFactory.prototype.open = function (...given) {
      const opening = open.apply(this, given);
      opening.addEventListener('success', () => wreck.opened.push(opening.result));
      return opening;
    };
    const put = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = function (...given) {
      const { failing } = wreck;
      if (failing === null || failing.left <= 0 || (failing.left < Infinity && this.name !== 'documents')) {
        return put.apply(this, given);
      }
      failing.left -= 1;
      if (failing.how !== 'transaction') throw new DOMException('by the test', failing.how);
      const asked = put.apply(this, given);
      // What is jotted down is committed by now, and stays.
      if (!this.name.startsWith('jotted')) asked.addEventListener('success', () => this.transaction.abort());
      return asked;
    };
    new MutationObserver(() => {
      const words = document.querySelector('.notices')?.textContent ?? '';
      if (words !== '' && !wreck.said.endsWith(words)) wreck.said += `\n${words}`;
    }).observe(document, { subtree: true, childList: true, characterData: true });
  });
}

/** The next writes fail: so many of the document, or all of everything. */
export const fail = (page: Page, how: Failing, count = Infinity): Promise<void> =>
  page.evaluate<void, readonly [Failing, number]>(
    ([of, left]) => void (window.wreck.failing = { how: of, left }),
    [how, count],
  );

export const mend = (page: Page): Promise<void> => page.evaluate(() => void (window.wreck.failing = null));

/** Closes the connections that the page has, as a browser does whose storage fails. */
export const closeConnections = (page: Page): Promise<void> =>
  page.evaluate(() => {
    for (const database of window.wreck.opened.splice(0)) database.close();
  });

/** All that the strip has said since the page was loaded. */
export const saidBy = (page: Page): Promise<string> => page.evaluate(() => window.wreck.said);

/** Enters one text after another, as fast as a quick typist, in the page itself: the protocol is too slow for that on a busy machine. */
export const enterQuickly = (field: Locator, words: string, count: number): Promise<void> =>
  field.evaluate<void, readonly [string, number], HTMLInputElement>(
    async (input, [stem, most]) => {
      const set = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')!.set!;
      for (let nth = 1; nth <= most; nth += 1) {
        input.focus();
        set.call(input, `${stem} ${nth}`);
        input.dispatchEvent(new Event('input', { bubbles: true }));
        input.dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', bubbles: true }));
        await new Promise((resolve) => setTimeout(resolve, 80));
      }
    },
    [words, count],
  );
