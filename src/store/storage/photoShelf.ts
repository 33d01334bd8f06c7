/** Where photos are kept in the browser, as JPEG, each under the sum of its bytes. */
import { openShelf, type Shelf } from './shelf.ts';

export type PhotoShelf = Shelf<Uint8Array>;

const isBytes = (data: unknown): data is Uint8Array => data instanceof Uint8Array;

export const openPhotoShelf = (now: () => number): PhotoShelf =>
  // Some 300 kB each, and of several jobs as many as one may have.
  openShelf({ database: 'cagewright-photos', store: 'photos', most: 1000, isSound: isBytes }, now);
