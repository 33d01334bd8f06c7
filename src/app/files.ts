/** The ways of the job's and the shop's files in and out of the browser: the picker, a dropped file, the download. */
import type { Fault } from '../core/job/fault.ts';
import { fileNameFor } from '../store/document/fileName.ts';
import type { Version } from '../store/types.ts';
import { editor, jobDocument, opening, shopRecord } from '../store/page.ts';
import { downloadText } from '../ui/kit/download.ts';

/** A job of 2 000 tubes is a few MB. Far beyond that a file is no job, and reading it would only fill the memory. */
const GREATEST_FILE = 64 * 1024 * 1024;

const SCAN = /\.(?:obj|ply|stl|glb)$/iu;
const OPEN_SCAN = 'a scan is no job: open it at the Survey, under Scans of the car';

type ReadFile = { readonly text: string } | { readonly why: string };

async function readFile(file: File): Promise<ReadFile> {
  if (file.size > GREATEST_FILE) return { why: 'more than 64 MB, no job file' };
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(await file.arrayBuffer()) };
  } catch (error) {
    // The decoder's error is a TypeError; what the system cannot read, a folder among it, is a DOMException.
    return { why: error instanceof TypeError ? 'not UTF-8 text' : 'cannot be read' };
  }
}

/**
 * Reads a file that a person picked or dropped, and opens it; what is wrong with it shows as `refused`, in the words of
 * the command line.
 */
export async function openFile(file: File): Promise<void> {
  if (SCAN.test(file.name)) return editor.getState().refuse(file.name, [{ place: '', message: OPEN_SCAN }]);
  const read = await readFile(file);
  if ('why' in read) editor.getState().refuse(file.name, [{ place: '', message: read.why }]);
  else opening.open(file.name, read.text);
}

export const pickFile = (): void => pick((file) => void openFile(file));

/** Puts the shop record that the person picks in the place of the one that is there; calls back with what is wrong with it. */
export const pickShopFile = (answered: (fileName: string, faults: readonly Fault[]) => void): void =>
  pick(async (file) => {
    const read = await readFile(file);
    const faults = 'why' in read ? [{ place: '', message: read.why }] : shopRecord.getState().open(read.text);
    answered(file.name, faults);
  });

function pick(picked: (file: File) => void): void {
  const input = document.createElement('input');
  input.type = 'file';
  input.accept = '.json,application/json';
  input.addEventListener('change', () => {
    const file = input.files?.[0];
    if (file) picked(file);
  });
  input.click();
}

/** A damaged one says so in its name. */
export function downloadVersion({ name, text, why }: Version): void {
  downloadText(`${why === undefined ? '' : 'damaged '}${fileNameFor(name)}`, 'application/json', text);
}

export function saveFile(): void {
  if (!jobDocument.getState().ready) return; // there is no job yet
  const { fileName, text } = jobDocument.getState().file();
  downloadText(fileName, 'application/json', text);
}

export const saveShopFile = (): void =>
  downloadText('shop-record.json', 'application/json', shopRecord.getState().text());
