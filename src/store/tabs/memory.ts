/** What a tab remembers of itself through a reload. */
import { STATION_NAMES } from '../storage/records.ts';
import type { Station } from '../types.ts';

export interface TabMemory {
  readonly slot: string;
  readonly station: Station;
}

const MEMORY = 'cagewright.tab';

export function remember(memory: TabMemory): void {
  try {
    sessionStorage.setItem(MEMORY, JSON.stringify(memory));
  } catch {
    // Storage is off: after a reload this tab takes up what was saved last.
  }
}

/** null when this tab has not been here before. */
export function recall(): TabMemory | null {
  try {
    const memory = JSON.parse(sessionStorage.getItem(MEMORY) ?? 'null') as Partial<TabMemory> | null;
    if (typeof memory?.slot !== 'string' || !STATION_NAMES.some((known) => known === memory.station)) return null;
    return memory as TabMemory;
  } catch {
    return null;
  }
}
