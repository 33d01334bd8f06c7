/** The look's two grounds: the light one, and the one for a dim shop. Kept on this machine. */
import { keep, readKept } from '../ui/kit/kept.ts';

const DIM = 'dim';

export const isDim = (): boolean => document.documentElement.dataset['light'] === DIM;

export function setDim(dim: boolean): void {
  show(dim);
  keep('light', dim ? DIM : 'bright');
}

/** As this machine was left. */
export const showKeptLight = (): void => show(readKept('light') === DIM);

/** The browser's own edge takes the colour of the film, as the page does. */
function show(dim: boolean): void {
  const page = document.documentElement;
  if (dim) page.dataset['light'] = DIM;
  else delete page.dataset['light'];
  const film = getComputedStyle(page).getPropertyValue('--film').trim();
  document.querySelector('meta[name="theme-color"]')?.setAttribute('content', film);
}
