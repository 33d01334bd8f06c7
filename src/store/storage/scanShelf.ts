/** Where the data of scans are kept in the browser, each under its sum (core/scan/sum.ts). */
import { isScanData, type ScanData } from '../../core/scan/types.ts';
import { openShelf, type Shelf } from './shelf.ts';

export type ScanShelf = Shelf<ScanData>;

export const openScanShelf = (now: () => number): ScanShelf =>
  // Of the largest some 30 MB each; more than a job may have.
  openShelf({ database: 'cagewright-scans', store: 'scans', most: 20, isSound: isScanData }, now);
