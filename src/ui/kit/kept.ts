/**
 * What a person set up on this machine and finds again, such as the light and the hints seen. Part neither of the job nor of the shop
 * record. What was kept is read by the setting's own reader, which takes nothing on trust. A browser that keeps nothing (private
 * window, storage full or off) forgets it when the page is closed.
 */
import { useMemo, useSyncExternalStore } from 'react';

/** 'feet' where another station leads to the table of feet; forgotten once it is shown. */
export const OPENS_FRAME_AT = 'frame-opens-at';

/** For this page, by name: stands in for a storage that keeps nothing. */
const ofThisPage = new Map<string, string>();
const listeners = new Set<() => void>();

/** The setting, null where none was kept. */
export const readKept = (name: string): unknown => parsed(textOf(name));

export function keep(name: string, value: unknown): void {
  const text = JSON.stringify(value);
  ofThisPage.set(name, text);
  try {
    window.localStorage.setItem(`cagewright.${name}`, text);
  } catch {
    // Full or forbidden: this page still knows it.
  }
  for (const changed of listeners) changed();
}

/**
 * The setting, the same wherever it is used, and the way to change it; `read` makes it from what was kept, null where nothing
 * was, and is the same function every time.
 */
export function useKept<T>(name: string, read: (kept: unknown) => T): readonly [T, (next: T) => void] {
  const text = useSyncExternalStore(listen, () => textOf(name));
  const value = useMemo(() => read(parsed(text)), [text, read]);
  return [value, (next) => keep(name, next)];
}

function listen(changed: () => void): () => void {
  listeners.add(changed);
  return () => listeners.delete(changed);
}

function textOf(name: string): string | null {
  const here = ofThisPage.get(name);
  if (here !== undefined) return here;
  try {
    return window.localStorage.getItem(`cagewright.${name}`);
  } catch {
    return null;
  }
}

function parsed(text: string | null): unknown {
  if (text === null) return null;
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return null;
  }
}
