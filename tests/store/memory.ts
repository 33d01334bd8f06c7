/** A browser in memory: storage and channel that several pages share, as the tabs of one browser do. */
import { readFileSync } from 'node:fs';
import { parseJob } from '../../src/core/job/parse.ts';
import { bareId } from '../../src/core/job/reference.ts';
import { serialiseJob } from '../../src/core/job/serialise.ts';
import { redoLabel, undoLabel } from '../../src/core/session/history.ts';
import { createDocument, type DocumentStore } from '../../src/store/document/createDocument.ts';
import { createEditor, type EditorStore } from '../../src/store/editor/createEditor.ts';
import { createKeeping, type KeepingStore } from '../../src/store/keeping/createKeeping.ts';
import { createOpening, type Opening } from '../../src/store/opening.ts';
import { createResults, type ResultsStore } from '../../src/store/results/createResults.ts';
import type { TabMemory } from '../../src/store/tabs/memory.ts';
import { mayWriteOver, nextStamp } from '../../src/store/storage/persistence.ts';
import type { Damaged, KeptVersion, Persistence, Stamp, Stored, Watcher } from '../../src/store/storage/persistence.ts';
import { checkStored, damagedFrom, LAST_DATE } from '../../src/store/storage/records.ts';
import type { Surroundings } from '../../src/store/keeping/surroundings.ts';
import { WORK } from '../../src/core/stages/work.ts';
import { inSpareTime } from '../../src/workers/doing.ts';

/** The work of the stages, at hand: a test does not wait for what the page fetches. */
export const workHere = ({ name }: { readonly name: string }): ((item: object) => unknown) =>
  WORK.find((each) => each.name === name)!.run;

const FEW = ['hoop', 'stay', 'diagonal', 'harness', 'leg'];

/**
 * The demo with a few of its members alone: what is kept and comes back is the same for any job, and a tab derives it with every page
 * and every edit.
 */
export const DEMO = fewOf(readFileSync(new URL('../fixtures/demo-typed.cagewright.json', import.meta.url), 'utf8'));

function fewOf(text: string): string {
  const parsed = parseJob(text);
  if (!parsed.ok) throw new Error('the demo must open');
  const { job } = parsed;
  const isThere = ({ at }: (typeof job.nodes)[number]): boolean => !('member' in at) || FEW.includes(bareId(at.member));
  const members = job.members.filter(({ id }) => FEW.includes(id));
  return serialiseJob({ ...job, members, nodes: job.nodes.filter(isThere) });
}

export interface Browser {
  /** By slot; what a test puts there instead need not be sound. */
  readonly documents: Map<string, Stored>;
  versions: KeptVersion[];
  damaged: Damaged[];
  /** While true, everything that is asked of the storage is refused. */
  broken: boolean;
  /** While it has a name, writing is refused with an error of that name. */
  refusal: string | null;
  /** While true, versions are refused, documents are taken. */
  noVersions: boolean;
  /** What was jotted down: slot and name. */
  jotted: (readonly [string, string])[];
  /** How often a document was to be written. */
  writes: number;
  /** While it is set, all that is asked of the storage waits for it. */
  pause: Promise<void> | null;
  /** Milliseconds; tests move it on. */
  time: number;
  openTab(memory?: TabMemory | null): Promise<Tab>;
  /** Loads a tab without waiting until its work is there. */
  loadTab(memory?: TabMemory | null): Tab;
  readonly persistence: Persistence;
  /** What happens to the storage, as all tabs hear it. */
  readonly happens: Watcher;
}

export interface Tab {
  readonly document: DocumentStore;
  readonly editor: EditorStore;
  readonly results: ResultsStore;
  readonly keeping: KeepingStore;
  readonly opening: Opening;
  /** What the tab would find again after a reload. */
  memory(): TabMemory | null;
  /** Lets it do what it put off until it was idle: so many tasks, or all there are. */
  idle(tasks?: number): void;
  /** What happens to the storage, as this tab alone hears it. */
  readonly happens: Watcher;
}

export const documentOf = ({ document }: Pick<Tab, 'document'>) => document.getState();
export const editorOf = ({ editor }: Pick<Tab, 'editor'>) => editor.getState();
export const resultsOf = ({ results }: Pick<Tab, 'results'>) => results.getState();
export const keepingOf = ({ keeping }: Pick<Tab, 'keeping'>) => keeping.getState();
/** What undo would take back, and redo do again. */
export const undoOf = (tab: Pick<Tab, 'document'>) => undoLabel(documentOf(tab).committed.history);
export const redoOf = (tab: Pick<Tab, 'document'>) => redoLabel(documentOf(tab).committed.history);

export function openBrowser(): Browser {
  const documents: Browser['documents'] = new Map();
  const listeners: ((slot: string, stamp: Stamp) => void)[] = [];
  const watchers: Watcher[] = [];
  let names = 0;

  const persistence: Persistence = {
    async slots() {
      await reached();
      const dateOf = (record: Stored | null): number => {
        const { savedAt } = record?.kept ?? {};
        return typeof savedAt === 'number' && savedAt >= 0 && savedAt <= LAST_DATE ? savedAt : LAST_DATE;
      };
      return [...documents].toSorted(([, a], [, b]) => dateOf(b) - dateOf(a)).map(([slot]) => slot);
    },
    async copies(slot) {
      await reached();
      const found = documents.get(slot);
      if (found === undefined) return [];
      const setAside = async (damaged: Damaged): Promise<void> => {
        refuseWriting();
        browser.damaged.unshift(damaged);
        documents.delete(slot);
      };
      return [{ found, checked: checkStored(found, slot), setAside }];
    },
    async save(kept, tab, seen, most) {
      browser.writes += 1;
      await reached();
      refuseWriting();
      const found = documents.get(kept.slot);
      const checked = checkStored(found, kept.slot);
      if (found !== undefined && !checked.ok) {
        browser.damaged.unshift(damagedFrom(found, checked.why, browser.time));
      }
      const stored = checked.ok ? checked.value.stamp : undefined;
      if (!mayWriteOver(stored, tab, seen)) return null;
      const stamp = nextStamp(stored, tab, seen);
      if (found === undefined) {
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
    async versions() {
      await reached();
      return browser.versions;
    },
    async addVersion(version, most) {
      await reached();
      refuseWriting();
      if (browser.noVersions) throw new Error('no room for a version');
      const same = browser.versions.filter(({ slot }) => slot === version.slot);
      const dropped = same.slice(most - 1);
      const others = browser.versions.filter((one) => !dropped.includes(one) && one.savedAt !== version.savedAt);
      browser.versions = [version, ...others].toSorted((a, b) => b.savedAt - a.savedAt);
    },
    async keepDamaged(damaged) {
      await reached();
      refuseWriting();
      browser.damaged.unshift(damaged);
    },
    async damaged() {
      await reached();
      return browser.damaged;
    },
    jot: ({ slot, name }) => void browser.jotted.push([slot, name]), // here every write is answered at once
    pageGoes: () => undefined,
    evenOut: async () => undefined,
    watch: (watcher) => void watchers.push(watcher),
  };

  const browser: Browser = {
    documents,
    versions: [],
    damaged: [],
    broken: false,
    refusal: null,
    noVersions: false,
    jotted: [],
    writes: 0,
    pause: null,
    persistence,
    time: 1_000_000,
    loadTab: (memory) => loadTab(memory).tab,
    async openTab(memory) {
      const { tab, started } = loadTab(memory);
      await started;
      return tab;
    },
    happens: {
      stands: (trouble) => watchers.forEach((watcher) => watcher.stands(trouble)),
      lost: () => watchers.forEach((watcher) => watcher.lost()),
      isInSecond: (itIs) => watchers.forEach((watcher) => watcher.isInSecond(itIs)),
      leaving: async () => void (await Promise.all(watchers.map((watcher) => watcher.leaving()))),
    },
  };

  function loadTab(remembered: TabMemory | null = null): { tab: Tab; started: Promise<void> } {
    let memory = remembered;
    const mine: ((slot: string, stamp: Stamp) => void)[] = [];
    const waiting = new Set<() => void>();
    names += 1;
    const surroundings: Surroundings = {
      tab: `tab-${names}`,
      remembered,
      remember: (next) => (memory = next),
      newSlot: () => `slot-${(names += 1)}`,
      keepForGood: () => undefined,
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
      persistence,
    };
    const document = createDocument();
    const editor = createEditor(document);
    const keeping = createKeeping(document, editor);
    const results = createResults(document, editor);
    const opening = createOpening(document, editor, keeping);
    const nth = watchers.length;
    results.start(inSpareTime(surroundings.whenIdle, workHere));
    const started = keeping.start(surroundings);
    const idle = (tasks = Infinity): void => {
      for (let done = 0; done < tasks && waiting.size > 0; done += 1) {
        const [task] = waiting;
        waiting.delete(task!);
        task!();
      }
    };
    const stores = { document, editor, results, keeping, opening };
    return { tab: { ...stores, memory: () => memory, idle, happens: watchers[nth]! }, started };
  }

  async function reached(): Promise<void> {
    if (browser.pause !== null) await browser.pause;
    if (browser.broken) throw new Error('storage is off');
  }

  function refuseWriting(): void {
    if (browser.refusal !== null) throw new DOMException('refused', browser.refusal);
  }

  return browser;
}
