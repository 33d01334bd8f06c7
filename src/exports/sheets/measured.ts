/** A tube as it is marked out: the way in which it is measured, and the tape that comes of it. */
import { tapeList, type TapeMark, type TapeList, type TapeStep } from '../../core/marks/tape.ts';
import { feedOf, type Feed } from '../../core/solve/feed.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { zeroOfTape } from '../../core/words/blank.ts';
import type { Context } from './context.ts';

export interface Measured {
  readonly feed: Feed;
  readonly tape: TapeList;
}

/** In the way and the order in which the job has this tube fed. */
export function measured(tube: SolvedTube, { derived }: Pick<Context, 'derived'>): Measured {
  const feed = feedOf(derived.job, tube);
  return { feed, tape: tapeList(tube, feed)! };
}

/** Where a mark lies on the blank, mm from its end A. */
export const onBlank = ({ feed, tape }: Measured, step: TapeStep, mark: TapeMark): number =>
  tape.zero + (feed.from === 'B' || step.towards === 'A' ? -mark.at : mark.at);

/** Where the tape's zero is, as an instruction. */
export const zeroInWords = ({ feed }: Measured, zero: string): string =>
  zeroOfTape(feed.from).join(feed.from === 'middle' ? zero : '');
