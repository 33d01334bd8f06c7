/** What page and workers say to each other. Jobs are plain data, and are derived again where they are worked on. */
import type { Product } from '../exports/products/catalogue.ts';
import type { ScanCut } from '../exports/layout/scan-section-pdf.ts';
import type { ExportFile, PrintSettings } from '../exports/shared/files.ts';
import type { Setting } from '../exports/products/formats.ts';
import type { Job } from '../core/job/types.ts';

export interface MakeRequest {
  readonly kind: 'make';
  readonly job: Job;
  readonly products: readonly Product[];
  readonly setting: Setting;
}

/** A scan's section on paper. The cut is made on the page, where the scan's data are. */
export interface SectionRequest {
  readonly kind: 'section';
  readonly job: Job;
  readonly tube: string;
  readonly cuts: readonly ScanCut[];
  readonly print: PrintSettings;
}

export type Request = MakeRequest | SectionRequest | { readonly kind: 'zip'; readonly files: readonly ExportFile[] };

export type Answer =
  | { readonly kind: 'going'; readonly product: Product; readonly done: number; readonly total: number }
  | { readonly kind: 'files'; readonly files: readonly ExportFile[] }
  | { readonly kind: 'failed'; readonly why: string };
