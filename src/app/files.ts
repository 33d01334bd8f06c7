/** The job file's way in and out of the browser: the picker, a dropped file, the download. */
import { workspace } from '../store/workspace.ts';
import { downloadText } from '../ui/download.ts';

/** Reads a file that a person picked or dropped, and opens it; what is wrong with it shows as `refused`. */
export async function openFile(file: File): Promise<void> {
  workspace.getState().open(file.name, await file.text());
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

export function saveFile(): void {
  const { fileName, text } = workspace.getState().file();
  downloadText(fileName, 'application/json', text);
}
