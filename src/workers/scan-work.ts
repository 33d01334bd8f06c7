/** Reads a scan file, for a worker: says how far it is, and at last what came of it. */
import { readScan } from '../core/scan/read.ts';
import { sumOf } from '../core/scan/sum.ts';
import { MOST_SCAN_BYTES, type ReadScan } from '../core/scan/types.ts';
import { fault } from '../core/job/fault.ts';

export interface ScanAsk {
  readonly file: Pick<File, 'name' | 'size' | 'arrayBuffer'>;
  /** Of a cloud: every so manieth point. */
  readonly every: number;
}

export type ScanSaid =
  | { readonly kind: 'going'; readonly share: number }
  /** `sum`: of the file's bytes, see sumOf, and how much of it was taken. */
  | { readonly kind: 'came'; readonly came: ReadScan; readonly sum: string };

/** Never rejects. */
export async function readFile({ file, every }: ScanAsk, say: (said: ScanSaid) => void): Promise<void> {
  const refuse = (message: string): void =>
    say({ kind: 'came', came: { ok: false, fault: fault('', message) }, sum: '' });
  try {
    // Before anything is read of it: the readers say the same of what they are given.
    if (file.size > MOST_SCAN_BYTES)
      return refuse(`it has ${Math.round(file.size / 1024 / 1024)} MB, more than can be read`);
    const bytes = new Uint8Array(await file.arrayBuffer());
    const reading = readScan(file.name, bytes, { every });
    for (let next = reading.next(); ; next = reading.next()) {
      if (next.done)
        return say({ kind: 'came', came: next.value, sum: every > 1 ? `${sumOf(bytes)}-${every}` : sumOf(bytes) });
      say({ kind: 'going', share: next.value });
    }
  } catch (error) {
    // A folder, a file that has gone, or no memory for it.
    refuse(`it cannot be read: ${error instanceof Error ? error.message : String(error)}`);
  }
}
