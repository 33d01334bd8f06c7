/** What a fit to a tape's figures says of each bend, and the same as a run and the job hold it. */
import type { BentBend, BentTube } from '../job/kinds/bent.ts';
import type { Marking } from '../job/kinds/marking.ts';
import { readByHand } from '../job/read-by-hand.ts';
import { beyondNode } from '../solve/amount.ts';
import type { SolvedTube } from '../solve/types.ts';

/** What one bend is made of: degrees, or mm along the tube from end A's node to the middle of its arc. */
export interface Fitted {
  readonly what: 'angle' | 'rotation' | 'middle';
  readonly bend: number;
  /** Of a middle: how far from it the bend's mark lies, its tangent nearer the end in front, mm a degree of the bend; of others 0. */
  readonly toMark: number;
  /** As expected where it is not told. */
  readonly value: number;
  /** As planned, or as read by hand. */
  readonly expected: number;
  readonly isRead: boolean;
  /** Standard deviation of `value`. */
  readonly deviation: number;
  readonly told: boolean;
}

/** Where a bend's mark lies, mm along the tube from end A's node. */
export interface FittedMark extends Pick<Fitted, 'value' | 'expected' | 'deviation'> {
  readonly bend: number;
}

/** Where a tape has its zero on a tube that is sawn to length, mm from end A's node; `length` from node to node. */
export const sawnZero = ({ ends }: Pick<SolvedTube, 'ends'>, length: number, from: Marking['from']): number =>
  ({ A: -beyondNode(ends[0]), B: length + beyondNode(ends[1]), middle: length / 2 })[from];

/** The same as the job keeps it, of a run that holds these bends: to a thousandth of a degree and of a millimetre. */
export const takenOver = (parts: readonly Fitted[], made: BentTube['bends']): readonly BentBend[] =>
  fittedBends(
    parts.map((part) => ({ ...part, value: toThousandth(part.value) })),
    made,
  ).map((bend) => ({ ...bend, start: toThousandth(bend.start!) }));

const toThousandth = (value: number): number => Math.round(value * 1000) / 1000;

/** As a run holds them, of every bend of the tube from end A. What was read of one by hand stays beside that. */
export function fittedBends(
  parts: readonly Pick<Fitted, 'what' | 'bend' | 'toMark' | 'value'>[],
  made: BentTube['bends'],
): readonly BentBend[] {
  const of = (what: Fitted['what'], bend: number) => parts.find((part) => part.what === what && part.bend === bend);
  return parts
    .filter(({ what }) => what === 'angle')
    .map(({ bend, value: net }): BentBend => {
      const rotation = of('rotation', bend)?.value;
      const middle = of('middle', bend)!;
      const start = middle.value + middle.toMark * net;
      const before = made.find((each) => each.bend === bend);
      const fitted = {
        bend,
        pulled: net,
        net,
        ...(rotation !== undefined && { rotation }),
        start,
        ...(before?.across && { across: before.across }),
        fitted: true,
      };
      const hand = before && readByHand(before);
      if (hand == null) return fitted;
      const { bend: _, pulled, kept: _kept, across: _across, ...read } = hand;
      return { ...fitted, pulled, read };
    });
}
