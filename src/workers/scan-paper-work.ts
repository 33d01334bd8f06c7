/** What page and worker say to each other about paper with a scan on it. The cut is made on the page, where the scan's data are. */
import type { Job } from '../core/job/types.ts';
import type { ScanCut } from '../exports/layout/scan-section-pdf.ts';
import type { ExportFile, PrintSettings } from '../exports/shared/files.ts';

export interface ScanPaperAsk {
  readonly job: Job;
  readonly tube: string;
  readonly cuts: readonly ScanCut[];
  readonly print: PrintSettings;
}

export type ScanPaperSaid =
  | { readonly kind: 'file'; readonly file: ExportFile }
  | { readonly kind: 'failed'; readonly why: string };
