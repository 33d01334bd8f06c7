/** Every sheet marks a tube out in the way and the order in which the job has it fed. */
import { tapeList } from '../../core/marks/tape.ts';
import { feedOf } from '../../core/solve/feed.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { zeroOfTape } from '../../core/words/blank.ts';
import type { Measured } from '../../drawing/blank/measured.ts';
import type { Context } from './context.ts';

export function measured(tube: SolvedTube, { derived }: Pick<Context, 'derived'>): Measured {
  const feed = feedOf(derived.job, tube);
  return { feed, tape: tapeList(tube, feed)! };
}

/** Where the tape's zero is, as an instruction. */
export const zeroInWords = ({ feed }: Measured, zero: string): string =>
  zeroOfTape(feed.from).join(feed.from === 'middle' ? zero : '');
