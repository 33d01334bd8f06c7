/** The one workspace of this page and the shop record beside it, as plain stores and as hooks. */
import { useStore } from 'zustand';
import { browserSurroundings } from './browser.ts';
import { createWorkspace } from './createWorkspace.ts';
import { createShop, type ShopState } from './shop/createShop.ts';
import type { Workspace } from './types.ts';

/** For code that is no component: `workspace.getState().edit(...)`, `workspace.subscribe(...)`. */
export const workspace = createWorkspace();

/** A component's view of the workspace: `useWorkspace((state) => state.job)`. Select a value that stays the same object. */
export const useWorkspace = <T>(select: (state: Workspace) => T): T => useStore(workspace, select);

export const shopRecord = createShop(workspace);

export const useShop = <T>(select: (state: ShopState) => T): T => useStore(shopRecord, select);

/** Brings the work back and keeps saving it, until the page goes. */
export function startWorkspace(): void {
  const { work, shop } = browserSurroundings();
  void workspace.start(work);
  void shopRecord.start(shop);
  const flush = (): void => {
    void workspace.flush();
    void shopRecord.flush();
  };
  window.addEventListener('pagehide', flush);
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden') flush();
  });
  window.addEventListener('beforeunload', (event) => {
    if (workspace.getState().saved === 'failed') event.preventDefault();
  });
}
