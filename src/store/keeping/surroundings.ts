/** What keeping is given from outside: what keeps the work, the clock, spare time, names, the demo. In a browser: browser.ts. */
import type { Persistence } from '../storage/persistence.ts';
import type { TabMemory } from '../tabs/memory.ts';
import type { Tabs } from '../tabs/tabs.ts';

export interface Surroundings {
  readonly persistence: Persistence;
  readonly tabs: Tabs;
  /** Names this tab among those of the browser, anew at each load of the page. */
  readonly tab: string;
  /** null when this tab has not been here before. */
  readonly remembered: TabMemory | null;
  remember(memory: TabMemory): void;
  newSlot(): string;
  /** Asks the browser, the first time, not to clear the work away when it wants room. */
  keepForGood(): void;
  now(): number;
  /** Runs the task once, when there is nothing else to do; answers how to drop it. */
  whenIdle(task: () => void): () => void;
  /** The text of the demo's job file. */
  fetchDemo(): Promise<string>;
}
