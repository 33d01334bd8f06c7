/** A browser in memory: storage and channel that several workspaces share, as the tabs of one browser do. */
import { readFileSync } from 'node:fs';
import { createWorkspace } from '../../src/store/createWorkspace.ts';
import type { WorkspaceStore } from '../../src/store/createWorkspace.ts';
import { mayWriteOver } from '../../src/store/persistence.ts';
import type { Kept, KeptVersion, Stamp } from '../../src/store/persistence.ts';
import type { Surroundings, TabMemory } from '../../src/store/surroundings.ts';

export const DEMO = readFileSync(new URL('../../public/demo.cagewright.json', import.meta.url), 'utf8');

export interface Browser {
  readonly documents: Map<string, { kept: Kept; stamp: Stamp }>;
  versions: KeptVersion[];
  /** While true, everything that is asked of the storage is refused. */
  broken: boolean;
  /** While true, versions are refused, documents are taken. */
  noVersions: boolean;
  /** Milliseconds; tests move it on. */
  time: number;
  openTab(memory?: TabMemory | null): Promise<Tab>;
}

export interface Tab {
  readonly workspace: WorkspaceStore;
  /** What the tab would find again after a reload. */
  memory(): TabMemory | null;
  /** Lets it do what it put off until it was idle: so many tasks, or all there are. */
  idle(tasks?: number): void;
}

export function openBrowser(): Browser {
  const documents: Browser['documents'] = new Map();
  const listeners: ((slot: string, stamp: Stamp) => void)[] = [];
  let names = 0;

  const browser: Browser = { documents, versions: [], broken: false, noVersions: false, time: 1_000_000, openTab };

  async function openTab(remembered: TabMemory | null = null): Promise<Tab> {
    let memory = remembered;
    const mine: ((slot: string, stamp: Stamp) => void)[] = [];
    const waiting = new Set<() => void>();
    names += 1;
    const surroundings: Surroundings = {
      tab: `tab-${names}`,
      remembered,
      remember: (next) => (memory = next),
      newSlot: () => `slot-${(names += 1)}`,
      now: () => browser.time,
      whenIdle(task) {
        waiting.add(task);
        return () => waiting.delete(task);
      },
      fetchDemo: async () => DEMO,
      tabs: {
        announce: (slot, stamp) => {
          for (const heard of listeners) if (!mine.includes(heard)) heard(slot, stamp);
        },
        listen: (heard) => {
          mine.push(heard);
          listeners.push(heard);
        },
      },
      persistence: {
        async load(slot) {
          refuseIfBroken();
          const latest = [...documents.values()].toSorted((a, b) => b.kept.savedAt - a.kept.savedAt)[0];
          return (slot === null ? undefined : documents.get(slot)) ?? latest ?? null;
        },
        async save(kept, tab, seen, most) {
          refuseIfBroken();
          const stored = documents.get(kept.slot)?.stamp;
          if (!mayWriteOver(stored, tab, seen)) return null;
          const stamp = { tab, count: (stored?.count ?? 0) + 1 };
          if (!documents.has(kept.slot)) {
            const newestFirst = [...documents.values()].toSorted((a, b) => b.kept.savedAt - a.kept.savedAt);
            for (const { kept: old } of newestFirst.slice(most - 1)) {
              documents.delete(old.slot);
              browser.versions = browser.versions.filter(({ slot }) => slot !== old.slot);
            }
          }
          // What a browser keeps is a copy of plain data.
          documents.set(kept.slot, { kept: structuredClone(kept), stamp });
          return stamp;
        },
        async documents() {
          refuseIfBroken();
          return [...documents.values()].map(({ kept }) => kept);
        },
        async versions() {
          refuseIfBroken();
          return browser.versions;
        },
        async addVersion(version, most) {
          refuseIfBroken();
          if (browser.noVersions) throw new Error('no room for a version');
          const same = browser.versions.filter(({ slot }) => slot === version.slot);
          const dropped = same.slice(most - 1);
          browser.versions = [version, ...browser.versions.filter((one) => !dropped.includes(one))];
        },
      },
    };
    const workspace = createWorkspace();
    await workspace.start(surroundings);
    const idle = (tasks = Infinity): void => {
      for (let done = 0; done < tasks && waiting.size > 0; done += 1) {
        const [task] = waiting;
        waiting.delete(task!);
        task!();
      }
    };
    return { workspace, memory: () => memory, idle };
  }

  function refuseIfBroken(): void {
    if (browser.broken) throw new Error('storage is off');
  }

  return browser;
}
