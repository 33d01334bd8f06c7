/** Tubes that can be put on a bender. Apart from what is done with them there, which the page fetches later. */
import type { Bender } from '../job/kinds/bender.ts';
import type { Die } from '../job/kinds/die.ts';
import type { SolvedTube } from '../solve/types.ts';

/** A tube with bends, and a die that somebody has set up a bender for. */
export interface BendableTube extends SolvedTube {
  readonly die: Die & { readonly bender: Bender };
}

/** Whether it can be rehearsed: it has bends, and its die a bender. */
export const isBendable = (tube: SolvedTube): tube is BendableTube =>
  tube.bends.length > 0 && tube.die?.bender !== undefined;
