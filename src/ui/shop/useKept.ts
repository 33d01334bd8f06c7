/**
 * A view setting that a person finds again on this machine; not part of the job. What was kept is read by the setting's own
 * reader, which takes nothing on trust. A browser that keeps nothing forgets it when the page is closed.
 */
import { useState } from 'react';

/** For this page, by name: stands in for a storage that is full or forbidden, and outlives the component. */
const ofThisPage = new Map<string, string>();

/** The setting, and the way to change it; `read` makes it from what was kept, null where nothing was. */
export function useKept<T>(name: string, read: (kept: unknown) => T): readonly [T, (next: T) => void] {
  const [value, setValue] = useState(() => read(parsed(ofThisPage.get(name) ?? stored(name))));
  const keep = (next: T): void => {
    const text = JSON.stringify(next);
    ofThisPage.set(name, text);
    try {
      window.localStorage.setItem(`cagewright.${name}`, text);
    } catch {
      // Full or forbidden: this page still knows it.
    }
    setValue(next);
  };
  return [value, keep];
}

function stored(name: string): string | null {
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
