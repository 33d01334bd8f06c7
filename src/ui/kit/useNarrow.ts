/** Whether the stations stand in one column with the bay, as on a telephone. The width is that of shell.css. */
import { useSyncExternalStore } from 'react';

const narrow = window.matchMedia('(max-width: 760px)');

export const isNarrow = (): boolean => narrow.matches;

export const useNarrow = (): boolean => useSyncExternalStore(listen, isNarrow);

function listen(changed: () => void): () => void {
  narrow.addEventListener('change', changed);
  return () => narrow.removeEventListener('change', changed);
}
