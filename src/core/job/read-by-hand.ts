/** What was read of a bend by hand, at the machine, where its run holds what was reckoned from a tape's figures. */
import type { Degrees } from '../geometry/angle.ts';
import type { BentBend } from './kinds/bent.ts';

/** The bend as it was read; null where it never was. */
export function readByHand(made: BentBend): BentBend | null {
  if (!made.fitted) return made;
  const { bend, pulled, read, across } = made;
  return read === undefined ? null : { bend, pulled, ...read, ...(across && { across }) };
}

/** How far it was pulled; null where nobody has said. */
export const pulledTo = (made: BentBend | undefined): Degrees | null => (made && readByHand(made)?.pulled) ?? null;
