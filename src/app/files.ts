/** The ways of the job's and the shop's files in and out of the browser: the picker, a dropped file, the download. */
import type { Fault } from '../core/job/fault.ts';
import { fileNameFor } from '../exports/shared/file-name.ts';
import type { Version } from '../store/types.ts';
import { editor, jobDocument, opening, shopRecord } from '../store/page.ts';
import { downloadText } from '../ui/kit/download.ts';
import { pickFrom, readFile } from '../ui/kit/pick-file.ts';

const SCAN = /\.(?:obj|ply|stl|glb)$/iu;
const OPEN_SCAN = 'a scan is no job: open it at the Survey, under Scans of the car';

/**
 * Reads a file that a person picked, dropped or was sent, and opens it, or asks what to do where it is another state of the open job; what is wrong
 * with it shows as `refused`, in the words of the command line.
 */
export async function openFile(file: File): Promise<void> {
  if (SCAN.test(file.name)) return editor.getState().refuse(file.name, [{ place: '', message: OPEN_SCAN }]);
  const read = await readFile(file);
  if ('why' in read) editor.getState().refuse(file.name, [{ place: '', message: read.why }]);
  else opening.bring(file.name, read.text);
}

export const pickFile = (): void => pickFrom((file) => void openFile(file));

/** Puts the shop record that the person picks in the place of the one that is there; calls back with what is wrong with it. */
export const pickShopFile = (answered: (fileName: string, faults: readonly Fault[]) => void): void =>
  pickFrom(async (file) => {
    const read = await readFile(file);
    const faults = 'why' in read ? [{ place: '', message: read.why }] : shopRecord.getState().open(read.text);
    answered(file.name, faults);
  });

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
