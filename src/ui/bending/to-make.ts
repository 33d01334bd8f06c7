/**
 * Whether the list of tubes to make lies over the Shop, as on the telephone beside the bender. It is a setting of the machine: a telephone that slept, or was
 * reloaded, comes back to it.
 */
import { editor } from '../../store/page.ts';
import { keep, useKept } from '../kit/kept.ts';

const KEY = 'to-make';

/** 'left': the key that opens it has not taken the focus yet. */
type ToMakeState = 'open' | 'left' | null;

const readState = (kept: unknown): ToMakeState => (kept === 'open' || kept === 'left' ? kept : null);

export const useToMake = (): ToMakeState => useKept(KEY, readState)[0];

export function openToMake(): void {
  keep(KEY, 'open');
  editor.getState().setStation('shop');
}

/** Back to the Shop. */
export const leaveToMake = (): void => keep(KEY, 'left');

export const forgetToMake = (): void => keep(KEY, null);
