/**
 * The page's side: has files made away from the page, so that it goes on answering, and can stop them at any moment by ending
 * the worker. The kernel's memory ends with it.
 */
import type { Job } from '../core/job/types.ts';
import { PRODUCTS, type Product } from '../exports/products/catalogue.ts';
import type { ExportFile } from '../exports/shared/files.ts';
import type { Setting } from '../exports/products/formats.ts';
import { missingFile, type Missing } from '../exports/products/missing.ts';
import { handOf, type Hand } from './hand.ts';
import type { Answer, Request, SectionRequest } from './messages.ts';

export interface Progress {
  readonly product: Product;
  /** Which of the products it is, 1 = first, and of how many. */
  readonly nth: number;
  readonly of: number;
  /** Of this product's own pieces. */
  readonly done: number;
  readonly total: number;
}

export type Hire = (kind: 'solids' | 'others') => Hand<Request, Answer>;

// Spelt out twice: only so does the build see that these are workers.
export const hireWorker: Hire = (kind) =>
  handOf(
    kind === 'solids'
      ? new Worker(new URL('./solids.ts', import.meta.url), { type: 'module' })
      : new Worker(new URL('./make.ts', import.meta.url), { type: 'module' }),
  );

export interface Made {
  /** In the sequence asked for. */
  readonly files: readonly ExportFile[];
  /** The products that could not be made, and why. */
  readonly missing: readonly Missing[];
}

/**
 * The products' files, without those that could not be made: one that cannot does not cost the others. Rejects where none
 * could, with an Error whose message is a sentence for a person; with the signal's own reason once that is aborted.
 */
export async function requestFiles(
  job: Job,
  products: readonly Product[],
  setting: Setting,
  heard: (progress: Progress) => void,
  signal: AbortSignal,
  hire: Hire = hireWorker,
): Promise<Made> {
  const files: ExportFile[] = [];
  const missing: Missing[] = [];
  for (const [i, product] of products.entries()) {
    const { photos: _, ...plain } = setting;
    // Each is some hundred kB, and one file alone shows them.
    const own = product === 'dossier.pdf' ? setting : plain;
    const request: Request = { kind: 'make', job, products: [product], setting: own };
    const report = (done: number, total: number) => heard({ product, nth: i + 1, of: products.length, done, total });
    try {
      files.push(...(await filled(request, PRODUCTS[product] === 'step' ? 'solids' : 'others', report, signal, hire)));
    } catch (error) {
      signal.throwIfAborted();
      missing.push({ product, why: error instanceof Error ? error.message : String(error) });
    }
  }
  if (missing.length === products.length) throw new Error([...new Set(missing.map(({ why }) => why))].join(' '));
  return { files, missing };
}

/** Several files as one zip under that name, with a text in it of those that are missing. */
export async function requestZip(
  fileName: string,
  { files, missing }: Made,
  signal: AbortSignal,
  hire: Hire = hireWorker,
): Promise<ExportFile> {
  const all = missing.length === 0 ? files : [...files, missingFile(missing)];
  const [zip] = await filled({ kind: 'zip', files: all }, 'others', () => {}, signal, hire);
  return { fileName, bytes: zip!.bytes };
}

/** A scan's section on paper. Rejects with a sentence where it cannot be made, and with the signal's reason. */
export async function requestSection(
  section: Omit<SectionRequest, 'kind'>,
  signal: AbortSignal,
  hire: Hire = hireWorker,
): Promise<ExportFile> {
  const [file] = await filled({ kind: 'section', ...section }, 'others', () => {}, signal, hire);
  return file!;
}

function filled(
  request: Request,
  kind: 'solids' | 'others',
  going: (done: number, total: number) => void,
  signal: AbortSignal,
  hire: Hire,
): Promise<readonly ExportFile[]> {
  return new Promise<readonly ExportFile[]>((resolve, reject) => {
    signal.throwIfAborted();
    const hand = hire(kind);
    const stop = () => {
      hand.end();
      reject(signal.reason as Error);
    };
    signal.addEventListener('abort', stop, { once: true });
    const done = () => {
      signal.removeEventListener('abort', stop);
      hand.end();
    };
    const fail = (why: string) => {
      done();
      reject(new Error(why));
    };
    hand.listen((answer) => {
      if (answer.kind === 'going') return going(answer.done, answer.total);
      if (answer.kind === 'failed') return fail(answer.why);
      done();
      resolve(answer.files);
    }, fail);
    hand.send(request);
  });
}
