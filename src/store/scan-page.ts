/** The scans of this page, as a plain store and as a hook; fetched with the first thing that shows one. */
import { useStore } from 'zustand';
import { hireForScan } from '../workers/scan-client.ts';
import { jobDocument } from './page.ts';
import { createScans, type ScansActions, type ScansState } from './scans/createScans.ts';
import { openScanShelf } from './storage/scanShelf.ts';

export const scans = createScans(
  jobDocument,
  openScanShelf(() => Date.now()),
  hireForScan,
);

/** Select a value that stays the same object. */
export const useScans = <T>(select: (state: ScansState & ScansActions) => T): T => useStore(scans, select);
