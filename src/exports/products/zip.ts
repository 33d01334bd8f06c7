/** Several files as one. */
import { zipSync } from 'fflate';
import { NO_DATE, type ExportFile } from '../shared/files.ts';

/** The same files give the same bytes, whatever the hour, and wherever on earth: a zip holds local time. */
export function zipBytes(files: readonly ExportFile[]): Uint8Array {
  const mtime = new Date(NO_DATE.getUTCFullYear(), 0, 1);
  return zipSync(Object.fromEntries(files.map(({ fileName, bytes }) => [fileName, bytes])), { mtime });
}
