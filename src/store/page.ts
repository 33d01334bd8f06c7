/** The stores of this page, as plain stores and as hooks; and how they are started. */
import { useStore } from 'zustand';
import { afterTime, besidePage, hireForStages } from '../workers/beside.ts';
import { fetchedRun, inSpareTime } from '../workers/doing.ts';
import { browserSurroundings } from './browser.ts';
import { createDocument, type DocumentActions, type DocumentState } from './document/createDocument.ts';
import { createEditor, type EditorActions, type EditorState } from './editor/createEditor.ts';
import { createKeeping, type KeepingActions, type KeepingState } from './keeping/createKeeping.ts';
import { createOpening } from './opening.ts';
import { createResults, type ResultsState } from './results/createResults.ts';
import { createShop, type ShopState } from './shop/createShop.ts';

/** For code that is no component: `jobDocument.getState().edit(...)`, `jobDocument.subscribe(...)`. */
export const jobDocument = createDocument();
export const editor = createEditor(jobDocument);
export const keeping = createKeeping(jobDocument, editor);
export const results = createResults(jobDocument, editor);
export const opening = createOpening(jobDocument, editor, keeping);
export const shopRecord = createShop(jobDocument);

/** A component's view of the open job: `useDocument((state) => state.job)`. Select a value that stays the same object. */
export const useDocument = <T>(select: (state: DocumentState & DocumentActions) => T): T =>
  useStore(jobDocument, select);
export const useEditor = <T>(select: (state: EditorState & EditorActions) => T): T => useStore(editor, select);
export const useResults = <T>(select: (state: ResultsState) => T): T => useStore(results, select);
export const useKeeping = <T>(select: (state: KeepingState & KeepingActions) => T): T => useStore(keeping, select);
export const useShop = <T>(select: (state: ShopState) => T): T => useStore(shopRecord, select);

/**
 * Brings the work back and keeps saving it, until the page goes; `enterPending` enters what a field still holds then. That and putting it
 * down are one call, with no drawing between: of a page that is going a busy machine runs a tenth of a second, and not more.
 */
export function startPage(enterPending: () => void): void {
  const { work, shop } = browserSurroundings();
  results.start(besidePage(hireForStages, afterTime, inSpareTime(work.whenIdle, fetchedRun)));
  void keeping.start(work);
  void shopRecord.start(shop);
  const goes = (): void => {
    enterPending();
    keeping.pageGoes();
    shopRecord.pageGoes();
  };
  window.addEventListener('pagehide', goes);
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState !== 'hidden') return;
    void keeping.flush();
    void shopRecord.flush();
  });
  window.addEventListener('beforeunload', (event) => {
    goes(); // it need not: what is put down is let go again
    if ([keeping, shopRecord].some((store) => store.getState().saved === 'failed')) event.preventDefault();
  });
}
