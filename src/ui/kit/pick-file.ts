/** Files that a person picks, and their text. */

/** A job of 2 000 tubes is a few MB. Far beyond that a file is no job, and reading it would only fill the memory. */
const GREATEST_FILE = 64 * 1024 * 1024;

type ReadFile = { readonly text: string } | { readonly why: string };

/** The file's text, or why there is none. */
export async function readFile(file: File): Promise<ReadFile> {
  if (file.size > GREATEST_FILE) return { why: 'more than 64 MB, no job file' };
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(await file.arrayBuffer()) };
  } catch (error) {
    // The decoder's error is a TypeError; what the system cannot read, a folder among it, is a DOMException.
    return { why: error instanceof TypeError ? 'not UTF-8 text' : 'cannot be read' };
  }
}

/** The browser's own picker, for files in JSON, also where a platform let them pass as plain text alone. */
export function pickFrom(picked: (file: File) => void): void {
  const input = document.createElement('input');
  input.type = 'file';
  input.accept = '.json,.txt,application/json,text/plain';
  input.addEventListener('change', () => {
    const file = input.files?.[0];
    if (file) picked(file);
  });
  input.click();
}
