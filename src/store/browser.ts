/** What the stores find around them in a browser. */
import { randomName } from './storage/random-name.ts';
import type { Surroundings } from './keeping/surroundings.ts';
import { recall, remember } from './tabs/memory.ts';
import { MOST_DOCUMENTS } from './keeping/autosave.ts';
import { createChunking } from './storage/chunks.ts';
import { createConnection } from './storage/connection.ts';
import { createLastWords, type LastWords } from './storage/last-words.ts';
import { openIndexedDb } from './storage/indexedDb.ts';
import { openSecondCopy } from './storage/openSecondCopy.ts';
import { createPacking } from './storage/packed.ts';
import type { Persistence } from './storage/persistence.ts';
import { browserShop } from './shop/browser.ts';
import type { ShopSurroundings } from './shop/createShop.ts';
import { shopPersistence } from './storage/shopPersistence.ts';
import { openTabs } from './tabs/tabs.ts';
import { twoCopies } from './storage/twoCopies.ts';
import { whenIdle } from './whenIdle.ts';

/** For the job's documents, and for the shop record beside them: both on one connection, and one worker for their second copies. */
export function browserSurroundings(): { readonly work: Surroundings; readonly shop: ShopSurroundings } {
  const connection = createConnection();
  const page = randomName();
  const chunking = createChunking(page);
  const second = openSecondCopy(chunking);
  const lastWords = (kind: string): LastWords => createLastWords(`cagewright.${kind} `, () => window.localStorage);
  const first = openIndexedDb(connection, createPacking(chunking), lastWords('jotted'));
  const persistence = twoCopies(first, second, MOST_DOCUMENTS);
  return {
    work: workSurroundings(persistence),
    shop: browserShop(shopPersistence(connection, second, persistence.keepDamaged, page, lastWords('jottedShop'))),
  };
}

const workSurroundings = (persistence: Persistence): Surroundings => ({
  persistence,
  tabs: openTabs(),
  tab: randomName(),
  remembered: recall(),
  remember,
  newSlot: randomName,
  keepForGood: once(() => {
    // Missing where the page is served without TLS in the shop's own network; some browsers ask the person.
    navigator.storage?.persist?.().catch(() => undefined);
  }),
  now: () => Date.now(),
  whenIdle,
  async fetchDemo() {
    const response = await fetch(`${import.meta.env.BASE_URL}demo.cagewright.json`);
    if (!response.ok) throw new Error(`the demo answered ${response.status}`);
    return response.text();
  },
});

function once(task: () => void): () => void {
  let isDone = false;
  return () => {
    if (!isDone) task();
    isDone = true;
  };
}
