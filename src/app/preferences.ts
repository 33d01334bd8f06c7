/**
 * What a person set up on this machine and expects to find again: the dim light, the hints already seen. Not part of
 * the job. A browser that keeps nothing (private window, storage off) simply forgets them.
 */
type Preference = 'light' | 'hints';

function storage(): Storage | null {
  try {
    return window.localStorage;
  } catch {
    return null;
  }
}

export const readPreference = (name: Preference): string | null => storage()?.getItem(`cagewright.${name}`) ?? null;

export function keepPreference(name: Preference, value: string): void {
  try {
    storage()?.setItem(`cagewright.${name}`, value);
  } catch {
    // Full or forbidden: the preference lasts until the page is closed.
  }
}

export const isDim = (): boolean => document.documentElement.dataset['light'] === 'dim';

/** Switches between the light ground and the one for a dim shop. */
export function setDim(dim: boolean): void {
  if (dim) document.documentElement.dataset['light'] = 'dim';
  else delete document.documentElement.dataset['light'];
  keepPreference('light', dim ? 'dim' : 'bright');
}
