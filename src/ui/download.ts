/** Hands a text to the browser's own download, under a file name. Nothing leaves the machine. */
export function downloadText(fileName: string, mime: string, text: string): void {
  const url = URL.createObjectURL(new Blob([text], { type: `${mime};charset=utf-8` }));
  const link = document.createElement('a');
  link.href = url;
  link.download = fileName;
  link.click();
  // Some browsers read the blob after the click has returned.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}
