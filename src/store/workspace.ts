/** The one workspace of this page, as a plain store and as a hook. */
import { useStore } from 'zustand';
import { browserSurroundings } from './browser.ts';
import { createWorkspace } from './createWorkspace.ts';
import type { Workspace } from './types.ts';

/** For code that is no component: `workspace.getState().edit(...)`, `workspace.subscribe(...)`. */
export const workspace = createWorkspace();

/** A component's view of the workspace: `useWorkspace((state) => state.job)`. Select a value that stays the same object. */
export const useWorkspace = <T>(select: (state: Workspace) => T): T => useStore(workspace, select);

/** Brings the work back and keeps saving it, until the page goes. */
export function startWorkspace(): void {
  void workspace.start(browserSurroundings());
  const flush = (): void => void workspace.flush();
  window.addEventListener('pagehide', flush);
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden') flush();
  });
  window.addEventListener('beforeunload', (event) => {
    if (workspace.getState().saved === 'failed') event.preventDefault();
  });
}
