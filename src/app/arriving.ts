/**
 * Job files that the platform hands to the installed program: opened with it in the system's list of files, or sent to it from a share
 * sheet. Of several the first. They go through the door that a picked file goes through.
 */
import { editor } from '../store/page.ts';
import { openFile } from './files.ts';

/** Of the browsers that hand files to installed programs. */
interface LaunchQueue {
  setConsumer(take: (launched: { readonly files?: readonly { getFile(): Promise<File> }[] }) => void): void;
}

/** As public/sent.js puts it down. */
const SENT = { hash: '#sent', shelf: 'sent-job', name: 'X-File-Name' };

/** Takes what is there now, and what comes as long as the page is open. To be called once the open job is there: it may be a state of that. */
export function takeArrivals(): void {
  const { launchQueue } = window as { readonly launchQueue?: LaunchQueue };
  launchQueue?.setConsumer(({ files }) => {
    const handle = files?.[0];
    if (handle !== undefined) void arrive(() => handle.getFile());
  });
  if (location.hash !== SENT.hash) return;
  history.replaceState(null, '', location.pathname + location.search);
  void arrive(fromShelf);
}

async function arrive(fetched: () => Promise<File>): Promise<void> {
  try {
    await openFile(await fetched());
  } catch {
    editor
      .getState()
      .refuse('What was sent', [
        { place: '', message: 'it did not arrive whole: send it again, or open it from where it was saved' },
      ]);
  }
}

/** It lies there once. */
async function fromShelf(): Promise<File> {
  const shelf = await caches.open(SENT.shelf);
  const answer = await shelf.match(SENT.shelf);
  if (answer === undefined) throw new Error('there is nothing');
  const file = new File([await answer.arrayBuffer()], decodeURIComponent(answer.headers.get(SENT.name) ?? ''));
  await shelf.delete(SENT.shelf);
  return file;
}
