/** The job file's way in and out of the browser: the picker, a dropped file, the download. */
import { fileNameFor } from '../store/fileName.ts';
import type { Version } from '../store/types.ts';
import { workspace } from '../store/workspace.ts';
import { downloadText } from '../ui/kit/download.ts';

/** A job of 2 000 tubes is a few MB. Far beyond that a file is no job, and reading it would only fill the memory. */
const GREATEST_FILE = 64 * 1024 * 1024;

/**
 * Reads a file that a person picked or dropped, and opens it; what is wrong with it shows as `refused`, in the words of
 * the command line.
 */
export async function openFile(file: File): Promise<void> {
  const { open, refuse } = workspace.getState();
  const refuseFor = (message: string): void => refuse(file.name, [{ place: '', message }]);
  if (file.size > GREATEST_FILE) return refuseFor('more than 64 MB, no job file');
  let text;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(await file.arrayBuffer());
  } catch (error) {
    // The decoder's error is a TypeError; what the system cannot read, a folder among it, is a DOMException.
    return refuseFor(error instanceof TypeError ? 'not UTF-8 text' : 'cannot be read');
  }
  open(file.name, text);
}

export function pickFile(): void {
  const input = document.createElement('input');
  input.type = 'file';
  input.accept = '.json,application/json';
  input.addEventListener('change', () => {
    const file = input.files?.[0];
    if (file) void openFile(file);
  });
  input.click();
}

/** A damaged one says so in its name. */
export function downloadVersion({ name, text, why }: Version): void {
  downloadText(`${why === undefined ? '' : 'damaged '}${fileNameFor(name)}`, 'application/json', text);
}

export function saveFile(): void {
  if (!workspace.getState().ready) return; // there is no job yet
  const { fileName, text } = workspace.getState().file();
  downloadText(fileName, 'application/json', text);
}
