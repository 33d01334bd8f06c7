/**
 * The data of the open job's scans, and what is done with them: a file that is being read, a place that is being picked, what of them is drawn. The job says
 * which there are; this store fetches what it names, and holds it until another document is opened: an undo may name it again. Nothing of it is undone, or saved with the job.
 */
import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Fault } from '../../core/job/fault.ts';
import type { PointRef, ScanId, TubeRef } from '../../core/job/reference.ts';
import type { ScanData } from '../../core/scan/types.ts';
import { readBeside, type HireForScan } from '../../workers/scan-client.ts';
import type { DocumentStore } from '../document/createDocument.ts';
import type { ScanShelf } from '../storage/scanShelf.ts';

/** A file that has been read. */
export interface CameIn {
  readonly file: string;
  readonly sum: string;
  readonly data: ScanData;
  readonly every: number;
}

export interface ScanRefusal {
  readonly file: File;
  readonly fault: Fault;
  /** Of a cloud that is too large: so many. */
  readonly points?: number;
}

/** What the next press on a scan is for: the place of a measured point on it, or a new point of that name. */
export type Picking =
  | { readonly scan: ScanId; readonly point: PointRef }
  | { readonly scan: ScanId; readonly name: string };

export interface ScansState {
  /** By what they are kept under; null: not in this browser. One that is not in the map is being fetched. */
  readonly data: ReadonlyMap<string, ScanData | null>;
  readonly reading: { readonly file: string; readonly share: number } | null;
  readonly refused: ScanRefusal | null;
  /** Read, and not in the job yet. */
  readonly came: CameIn | null;
  /** The browser did not keep what was read: it is there until the page is closed. */
  readonly unkept: boolean;
  readonly picking: Picking | null;
  /** From 0 to 1. */
  readonly opacity: number;
  /** The tube in whose plane the scans are cut. */
  readonly section: TubeRef | null;
}

export interface ScansActions {
  read(file: File, every: number): Promise<void>;
  cancel(): void;
  /** What came in is in the job now, or is not wanted. */
  settle(): void;
  keep(came: CameIn): void;
  pick(picking: Picking | null): void;
  setOpacity(opacity: number): void;
  cutAt(section: TubeRef | null): void;
}

export type ScansStore = StoreApi<ScansState & ScansActions>;

const CLEAR = { refused: null, came: null, picking: null, section: null, reading: null } as const;

export function createScans(document: DocumentStore, shelf: ScanShelf, hire: HireForScan): ScansStore {
  let stopper: AbortController | null = null;

  const store: ScansStore = createStore((set, get) => ({
    ...CLEAR,
    data: new Map(),
    unkept: false,
    opacity: 0.35,
    async read(file, every) {
      get().cancel();
      const { signal } = (stopper = new AbortController());
      set({ reading: { file: file.name, share: 0 }, refused: null, came: null });
      const going = (share: number): void => set({ reading: { file: file.name, share } });
      try {
        const { came, sum } = await readBeside({ file, every }, going, signal, hire);
        if (came.ok) set({ reading: null, came: { file: file.name, sum, data: came.data, every } });
        else set({ reading: null, refused: { ...came, file } });
      } catch (error) {
        if (signal.aborted) return;
        const message = error instanceof Error ? error.message : String(error);
        set({ reading: null, refused: { file, fault: { place: '', message } } });
      }
    },
    cancel() {
      stopper?.abort();
      set({ reading: null });
    },
    settle: () => set({ came: null, refused: null }),
    keep({ sum, data }) {
      set({ data: new Map(get().data).set(sum, data), came: null, refused: null });
      shelf.put(sum, data).then(
        () => set({ unkept: false }),
        () => set({ unkept: true }),
      );
    },
    pick: (picking) => set({ picking }),
    setOpacity: (opacity) => set({ opacity }),
    cutAt: (section) => set({ section }),
  }));

  const asked = new Set<string>();

  /** Fetches what the job names and is not here. */
  function follow(): void {
    const { job } = document.getState();
    const named = new Set(job.scans.map(({ data }) => data));
    const { data, picking } = store.getState();
    for (const sum of named) {
      if (data.has(sum) || asked.has(sum)) continue;
      asked.add(sum);
      const arrived = (found: ScanData | null): void => {
        asked.delete(sum);
        const { data: before } = store.getState();
        // A file may have been read for it meanwhile.
        if (before.get(sum) === undefined) store.setState({ data: new Map(before).set(sum, found) });
      };
      shelf.get(sum).then(arrived, () => arrived(null));
    }
    if (picking !== null && !job.scans.some(({ id }) => id === picking.scan)) store.setState({ picking: null });
  }

  document.subscribe((next, last) => {
    if (next.opened !== last.opened) {
      store.getState().cancel();
      store.setState({ ...CLEAR, data: new Map() });
    }
    if (next.job.scans !== last.job.scans || next.opened !== last.opened) follow();
  });
  follow();
  return store;
}
