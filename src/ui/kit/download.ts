/** Hands files to the browser's own download, under their names. Nothing leaves the machine. */
import type { ExportFile } from '../../exports/shared/files.ts';

export function downloadText(fileName: string, mime: string, text: string): void {
  download(fileName, new Blob([text], { type: `${mime};charset=utf-8` }));
}

/** A file that was made, under the last part of its name. */
export function downloadFile({ fileName, bytes }: ExportFile): void {
  download(fileName.split('/').at(-1)!, new Blob([new Uint8Array(bytes)], { type: 'application/octet-stream' }));
}

function download(fileName: string, blob: Blob): void {
  const url = URL.createObjectURL(blob);
  const link = document.createElement('a');
  link.href = url;
  link.download = fileName;
  link.click();
  // Some browsers read the blob after the click has returned.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}
