/** What the workspace finds around it in a browser. */
import { randomName } from './random-name.ts';
import type { Surroundings, TabMemory } from './surroundings.ts';
import { MOST_DOCUMENTS } from './autosave.ts';
import { createConnection } from './connection.ts';
import { openIndexedDb } from './indexedDb.ts';
import { openSecondCopy } from './openSecondCopy.ts';
import type { Persistence } from './persistence.ts';
import { STATION_NAMES } from './records.ts';
import { browserShop } from './shop/browser.ts';
import type { ShopSurroundings } from './shop/createShop.ts';
import { shopPersistence } from './shop/persistence.ts';
import { openTabs } from './tabs.ts';
import { twoCopies } from './twoCopies.ts';

const MEMORY = 'cagewright.tab';

/** For the workspace, and for the shop record beside it: both on one connection, and one worker for their second copies. */
export function browserSurroundings(): { readonly work: Surroundings; readonly shop: ShopSurroundings } {
  const connection = createConnection();
  const second = openSecondCopy();
  const persistence = twoCopies(openIndexedDb(connection), second, MOST_DOCUMENTS);
  return {
    work: workSurroundings(persistence),
    shop: browserShop(shopPersistence(connection, second, persistence.keepDamaged)),
  };
}

const workSurroundings = (persistence: Persistence): Surroundings => ({
  persistence,
  tabs: openTabs(),
  tab: randomName(),
  remembered: recall(),
  remember(memory) {
    try {
      sessionStorage.setItem(MEMORY, JSON.stringify(memory));
    } catch {
      // Storage is off: after a reload this tab takes up what was saved last.
    }
  },
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

/** How long the page is left alone before something is done in its spare time, ms, where the browser does not say when it is idle. */
const SPARE = 200;

/** Not every browser says when it is idle. */
function whenIdle(task: () => void): () => void {
  if (typeof requestIdleCallback === 'function') {
    const asked = requestIdleCallback(task);
    return () => cancelIdleCallback(asked);
  }
  const asked = setTimeout(task, SPARE);
  return () => clearTimeout(asked);
}

function recall(): TabMemory | null {
  try {
    const memory = JSON.parse(sessionStorage.getItem(MEMORY) ?? 'null') as Partial<TabMemory> | null;
    if (typeof memory?.slot !== 'string' || !STATION_NAMES.some((known) => known === memory.station)) return null;
    return memory as TabMemory;
  } catch {
    return null;
  }
}
