/** The look's colours, read from the page's custom properties once and again when the light changes. */
import { useSyncExternalStore } from 'react';

const NAMES = [
  'bay-ground',
  'film',
  'film-raised',
  'rule',
  'rule-strong',
  'ink',
  'ink-soft',
  'dye',
  'oxide',
  'brass',
  'steel',
] as const;

export type Palette = Readonly<Record<(typeof NAMES)[number], string>>;

function readPalette(): Palette {
  const style = getComputedStyle(document.documentElement);
  return Object.fromEntries(NAMES.map((name) => [name, style.getPropertyValue(`--${name}`).trim()])) as Palette;
}

let known: { readonly light: string | undefined; readonly palette: Palette } | null = null;

function currentPalette(): Palette {
  const light = document.documentElement.dataset['light'];
  if (known === null || known.light !== light) known = { light, palette: readPalette() };
  return known.palette;
}

function watchLight(onChange: () => void): () => void {
  const observer = new MutationObserver(onChange);
  observer.observe(document.documentElement, { attributes: true, attributeFilter: ['data-light'] });
  return () => observer.disconnect();
}

export const usePalette = (): Palette => useSyncExternalStore(watchLight, currentPalette);
