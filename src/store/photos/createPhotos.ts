/**
 * The pictures of the open job's photos, and those that are coming in. The job says which there are; this store fetches what it names. Nothing of it
 * is undone, or saved with the job: an undo names a picture again, and it is still there.
 */
import { createStore, type StoreApi } from 'zustand/vanilla';
import { addPhoto } from '../../core/edit/photos.ts';
import { faultLine } from '../../core/job/fault.ts';
import { shownName } from '../../core/job/shown.ts';
import { readJpeg } from '../../core/photo/jpeg.ts';
import { sumOf } from '../../core/scan/sum.ts';
import { dayOf } from '../../exports/shared/day.ts';
import type { DocumentStore } from '../document/createDocument.ts';
import type { PhotoShelf } from '../storage/photoShelf.ts';
import type { Scale } from './scaled.ts';

export interface PhotosState {
  /** By their sums; null: not in this browser. One that is not in the map is being fetched. */
  readonly data: ReadonlyMap<string, Uint8Array | null>;
  /** Files that are being read: how many of how many are done; null where none is. */
  readonly coming: { readonly done: number; readonly total: number } | null;
  /** What was not taken, a sentence each. */
  readonly refused: readonly string[];
  /** The browser did not keep some of what was read: it is there until the page is closed. */
  readonly unkept: boolean;
}

export interface PhotosActions {
  /** Reads pictures, keeps them, and names each in the job. One that the job names already is put in its place. */
  add(files: readonly File[]): Promise<void>;
  /** The pictures of all the job's photos, as far as they are there. */
  all(): Promise<ReadonlyMap<string, Uint8Array>>;
}

export type PhotosStore = StoreApi<PhotosState & PhotosActions>;

export function createPhotos(document: DocumentStore, shelf: PhotoShelf, scale: Scale): PhotosStore {
  const store: PhotosStore = createStore((set, get) => ({
    data: new Map(),
    coming: null,
    refused: [],
    unkept: false,
    async add(files) {
      const { opened } = document.getState();
      set({ refused: [], coming: { done: 0, total: files.length } });
      for (const [done, file] of files.entries()) {
        set({ coming: { done, total: files.length } });
        // One after the other: each is some hundred MB while it is decoded.
        const why = await take(file, opened);
        if (why !== null) set({ refused: [...get().refused, `${shownName(file.name)} ${why}`] });
      }
      set({ coming: null });
    },
    async all() {
      const named = [...new Set(document.getState().job.photos.map(({ sum }) => sum))];
      const found = await Promise.all(
        named.map(async (sum) => [sum, get().data.get(sum) ?? (await fetched(sum))] as const),
      );
      return new Map(found.flatMap(([sum, bytes]) => (bytes === null ? [] : [[sum, bytes]])));
    },
  }));

  /** Null where it was taken, or another document was opened meanwhile. */
  async function take(file: File, opened: number): Promise<string | null> {
    const own = await ownAgain(file);
    const bytes = own ?? (await scale(file));
    if (document.getState().opened !== opened) return null;
    if (typeof bytes === 'string') return bytes;
    const read = readJpeg(bytes);
    if (!read.ok) return `is not taken: ${read.why}`;
    const sum = sumOf(bytes);
    const name = shownName(file.name.replace(/\.[^.]*$/u, '')) || 'Photo';
    const on = dayOf(new Date(file.lastModified));
    const faults = document.getState().edit(`Photo ${name}`, (job) => addPhoto(job, { name, sum, on }));
    if (faults.length > 0) return `is not taken: ${faults.map(faultLine).join('; ')}`;
    store.setState({ data: new Map(store.getState().data).set(sum, bytes) });
    await shelf.put(sum, bytes).catch(() => store.setState({ unkept: true }));
    return null;
  }

  /** The file's bytes where they are a picture that the job names and that was kept before. */
  async function ownAgain(file: File): Promise<Uint8Array | null> {
    const named = document.getState().job.photos;
    if (named.length === 0 || file.type !== 'image/jpeg') return null;
    const bytes = new Uint8Array(await file.arrayBuffer());
    const sum = sumOf(bytes);
    return named.some((each) => each.sum === sum) ? bytes : null;
  }

  const fetched = (sum: string): Promise<Uint8Array | null> => shelf.get(sum).catch(() => null);
  const asked = new Set<string>();

  /** Fetches what the job names and is not here. */
  function follow(): void {
    for (const { sum } of document.getState().job.photos) {
      if (store.getState().data.has(sum) || asked.has(sum)) continue;
      asked.add(sum);
      const arrived = (found: Uint8Array | null): void => {
        asked.delete(sum);
        const { data } = store.getState();
        // It may have been read from a file meanwhile.
        if (!data.has(sum)) store.setState({ data: new Map(data).set(sum, found) });
      };
      void fetched(sum).then(arrived);
    }
  }

  document.subscribe((next, last) => {
    if (next.opened !== last.opened) store.setState({ data: new Map(), refused: [] });
    if (next.job.photos !== last.job.photos || next.opened !== last.opened) follow();
  });
  follow();
  return store;
}
