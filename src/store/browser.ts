/** What the workspace finds around it in a browser. */
import type { Surroundings, TabMemory } from './surroundings.ts';
import { openIndexedDb, openTabs } from './indexedDb.ts';

const MEMORY = 'cagewright.tab';

export const browserSurroundings = (): Surroundings => ({
  persistence: openIndexedDb(),
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
  now: () => Date.now(),
  whenIdle,
  async fetchDemo() {
    const response = await fetch(`${import.meta.env.BASE_URL}demo.cagewright.json`);
    if (!response.ok) throw new Error(`the demo answered ${response.status}`);
    return response.text();
  },
});

/** 128 random bits; `crypto.randomUUID` is missing where the page is served without TLS in the shop's own network. */
const randomName = (): string =>
  Array.from(crypto.getRandomValues(new Uint32Array(4)), (word) => word.toString(36)).join('-');

/** How long the page is left alone before something is done in its spare time, ms, where the browser cannot tell. */
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
    const known = ['survey', 'frame', 'checks', 'shop'];
    if (typeof memory?.slot !== 'string' || !known.includes(memory.station ?? '')) return null;
    return memory as TabMemory;
  } catch {
    return null;
  }
}
