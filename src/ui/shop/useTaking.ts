/** Having files made, one request at a time: how far it is, what went wrong, and the way to stop it. */
import { useEffect, useRef, useState } from 'react';
import type { Derived } from '../../core/derive.ts';
import { withPrinted } from '../../core/shape/printed.ts';
import { dayOf } from '../../exports/shared/day.ts';
import { jobDocument } from '../../store/page.ts';
import type { Product } from '../../exports/products/catalogue.ts';
import type { Setting } from '../../exports/products/formats.ts';
import { missingNote } from '../../exports/products/missing.ts';
import { requestFiles, requestZip, type Progress } from '../../workers/client.ts';
import { downloadFile } from '../kit/download.ts';

/** What a tube is made by, on paper. */
const isPaper = (product: Product): boolean => product === 'sheets.pdf' || product.startsWith('wraps');

export interface Taking {
  /** Null when nothing is being made; 'zip' while the files are put into one. */
  readonly progress: Progress | 'zip' | null;
  /** What went wrong with the last request, in a sentence. */
  readonly trouble: string | null;
  /** How the last request ended, in a sentence; null before there was one, while one is under way, and where it went wrong. */
  readonly ended: string | null;
  /** What must be heard of the files last taken. */
  readonly notes: readonly string[];
  /** Has the products made and hands them out: as they are, or as one zip where that has a name. */
  take(products: readonly Product[], setting: Setting, zip: string | null): void;
  cancel(): void;
}

export function useTaking(): Taking {
  const [progress, setProgress] = useState<Progress | 'zip' | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const [ended, setEnded] = useState<string | null>(null);
  const [notes, setNotes] = useState<readonly string[]>([]);
  const stopper = useRef<AbortController>(null);
  // Whoever leaves the Shop has what was asked for all the same: only the showing ends.
  const shown = useRef(true);
  useEffect(() => {
    shown.current = true;
    return () => void (shown.current = false);
  }, []);

  /** The files to hand out, and what must be heard of them. */
  async function made(products: readonly Product[], setting: Setting, zip: string | null, signal: AbortSignal) {
    const { job, derived } = jobDocument.getState();
    const day = dayOf(new Date());
    const address = location.origin + location.pathname;
    const today = { ...setting, print: { ...setting.print, day, address } };
    const wanted = products.includes('dossier.pdf') && job.photos.length > 0;
    // What holds pictures comes with the first of them.
    const photos = wanted && (await (await import('../../store/photo-page.ts')).photos.getState().all());
    const made = await requestFiles(job, products, { ...today, ...(photos && { photos }) }, show, signal);
    const { files, missing } = made;
    const heard = [...missing.map(missingNote), ...files.flatMap(({ note }) => note ?? [])];
    // Of what was printed, not of what stands there by the time that it is ready.
    if (products.some(isPaper)) notePrinted(derived, day);
    if (zip === null) return { files, heard };
    show('zip');
    return { files: [await requestZip(zip, made, signal)], heard };
  }

  /** Paper that is out of the printer stays so, whatever is undone: it is noted without a step. */
  function notePrinted(frame: Derived, day: string): void {
    jobDocument.getState().note((job) => withPrinted(job, frame, day));
  }

  function show(next: Progress | 'zip' | null): void {
    if (shown.current) setProgress(next);
  }

  async function run(products: readonly Product[], setting: Setting, zip: string | null, signal: AbortSignal) {
    try {
      const { files, heard } = await made(products, setting, zip, signal);
      files.forEach(downloadFile);
      setNotes(heard);
      setEnded(`${files.length === 1 ? files[0]!.fileName : `${files.length} files`} handed to the browser to save.`);
    } catch (error) {
      if (signal.aborted) setEnded('Stopped: nothing was saved.');
      else setTrouble(error instanceof Error ? error.message : String(error));
    }
    show(null);
  }

  function take(products: readonly Product[], setting: Setting, zip: string | null): void {
    const abort = new AbortController();
    stopper.current = abort;
    setTrouble(null);
    setEnded(null);
    setNotes([]);
    setProgress({ product: products[0]!, nth: 1, of: products.length, done: 0, total: 1 });
    void run(products, setting, zip, abort.signal);
  }

  return { progress, trouble, ended, notes, take, cancel: () => stopper.current?.abort() };
}
