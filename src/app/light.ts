/** The look's two grounds: the light one, and the one for a dim shop. Kept on this machine. */
import { keep, readKept } from '../ui/kit/kept.ts';

const DIM = 'dim';

export const isDim = (): boolean => document.documentElement.dataset['light'] === DIM;

/** Whether this machine was left dim. */
export const wasDim = (): boolean => readKept('light') === DIM;

export function setDim(dim: boolean): void {
  if (dim) document.documentElement.dataset['light'] = DIM;
  else delete document.documentElement.dataset['light'];
  keep('light', dim ? DIM : 'bright');
}
