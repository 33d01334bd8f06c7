/** The photos of this page, as a plain store and as a hook; fetched with the first thing that shows or prints one. */
import { useStore } from 'zustand';
import { jobDocument } from './page.ts';
import { createPhotos, type PhotosActions, type PhotosState } from './photos/createPhotos.ts';
import { scaled } from './photos/scaled.ts';
import { openPhotoShelf } from './storage/photoShelf.ts';

export const photos = createPhotos(
  jobDocument,
  openPhotoShelf(() => Date.now()),
  scaled,
);

/** Select a value that stays the same object. */
export const usePhotos = <T>(select: (state: PhotosState & PhotosActions) => T): T => useStore(photos, select);
