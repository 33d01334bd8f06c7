/** A tube as it is marked out: the way in which it is measured, and the tape that comes of it. */
import { beyondNode } from '../../core/solve/amount.ts';
import type { TapeList, TapeMark, TapeStep } from '../../core/marks/tape.ts';
import type { Feed } from '../../core/solve/feed.ts';
import type { SolvedTube } from '../../core/solve/types.ts';

export interface Measured {
  readonly feed: Feed;
  readonly tape: TapeList;
}

/** Where a mark lies on the blank, mm from its end A. */
export const onBlank = ({ feed, tape }: Measured, step: TapeStep, mark: TapeMark): number =>
  tape.zero + (feed.from === 'B' || step.towards === 'A' ? -mark.at : mark.at);

/** Where the nodes of the two ends lie on the tape, mm from its zero; from the middle each on its own side of it. */
export function fromZero(tube: SolvedTube, { feed, tape }: Measured): readonly [a: number, b: number] {
  const nodeA = beyondNode(tube.ends[0]) + tape.grip[0];
  const [a, b] = [nodeA - tape.zero, nodeA + tube.developedLength - tape.zero];
  return feed.from === 'A' ? [a, b] : [-a, feed.from === 'B' ? -b : b];
}
