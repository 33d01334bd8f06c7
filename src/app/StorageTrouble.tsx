/** What is wrong with the browser's storage, what that means for the work, and what the person can do about it. */
import type { ReactNode } from 'react';
import type { Trouble } from '../store/types.ts';
import { keeping, useDocument, useKeeping, useShop } from '../store/page.ts';
import { saveFile, saveShopFile } from './files.ts';

export const STORAGE_WORDS: Readonly<Record<Trouble, string>> = {
  full: 'The disk, or the share of it that this browser gives to the page, is full. Make room: delete files, or other work kept in this browser.',
  slow: "This browser's storage takes long to answer.",
  blocked: 'A Cagewright tab of an older kind holds the storage. Close the other Cagewright tabs.',
  newer: 'A newer Cagewright has taken the storage over. Load this page again to work with the newer one.',
  off: "This browser's storage does not answer: it may be switched off for this page, or the disk may be full.",
};

export function StorageTrouble(): ReactNode {
  const trouble = useKeeping((state) => state.trouble);
  const ready = useDocument((state) => state.ready);
  const isUnsaved = useKeeping((state) => state.saved !== 'saved');
  const inSecond = useKeeping((state) => state.inSecond);
  if (trouble === null) return null;
  return (
    <section className="notice notice-wrong">
      <p>
        <strong>{headline(ready, isUnsaved)}</strong> {STORAGE_WORDS[trouble]}{' '}
        {meanwhile(trouble, ready, isUnsaved, inSecond)}
      </p>
      <div className="row">
        {ready && (
          <button type="button" className="press press-live" onClick={saveFile}>
            Save the file
          </button>
        )}
        {trouble === 'newer' ? (
          <button type="button" className="press" onClick={() => window.location.reload()}>
            Load again
          </button>
        ) : (
          isUnsaved && (
            <button type="button" className="press" onClick={() => keeping.getState().saveNow()}>
              Try again now
            </button>
          )
        )}
      </div>
    </section>
  );
}

/** Of the shop record, which is kept beside the job: only where something in it is not saved. */
export function ShopTrouble(): ReactNode {
  const isUnsaved = useShop((state) => state.saved === 'failed');
  const trouble = useShop((state) => state.trouble);
  const ofWork = useKeeping((state) => state.trouble);
  if (!isUnsaved || trouble === null) return null;
  return (
    <section className="notice notice-wrong">
      <p>
        <strong>The shop record is not saved.</strong> {trouble === ofWork ? '' : `${STORAGE_WORDS[trouble]} `}
        {trouble === 'newer'
          ? 'Count on this tab alone for what was changed in it: save it as a file.'
          : 'Saving is tried again by itself. Until then count on this tab alone for what was changed in it: save it as a file.'}
      </p>
      <div className="row">
        <button type="button" className="press press-live" onClick={saveShopFile}>
          Save the shop record
        </button>
      </div>
    </section>
  );
}

function headline(ready: boolean, isUnsaved: boolean): string {
  if (!ready) return 'Waiting for the work kept in this browser.';
  return isUnsaved ? 'Not saved.' : 'Nothing can be saved here now.';
}

function meanwhile(trouble: Trouble, ready: boolean, isUnsaved: boolean, inSecond: boolean): string {
  if (!ready) return 'It is not lost, and comes out by itself. A file opened meanwhile is kept beside it.';
  if (!isUnsaved) return 'Save the file after what you do here.';
  if (trouble === 'newer') return 'Save the file first: what you did here since is in this tab alone.';
  return inSecond
    ? 'Saving is tried again by itself. Until it says saved, what you do here goes into a second copy in this browser: save the file to be sure of it.'
    : 'Saving is tried again by itself. Until it says saved, what you did last is in this tab alone: save the file.';
}
