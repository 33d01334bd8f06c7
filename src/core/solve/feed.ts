/**
 * How a tube is fed: which end the tape is hooked over, in which order its bends are made with which end in front, and so what to cut.
 * Every length to cut, every mark, every drawing of the blank and every file goes by this; all of it stands in the job.
 *
 * Of orders the one of the tube's bend run comes first: the tube is being made in it. Else the one that the job keeps for the tube,
 * else the plain one from the hooked end. One that does not hold every bend once is passed over: the drawing has changed since.
 */
import { FIRST_BENDER } from '../job/kinds/bender.ts';
import { FIRST_MARKING } from '../job/kinds/marking.ts';
import type { BendStep, BentTube } from '../job/kinds/bent.ts';
import type { Job } from '../job/types.ts';
import type { LengthUnit } from '../units/length.ts';
import type { Marking } from '../job/kinds/marking.ts';
import type { TubeFeed } from '../job/kinds/feed.ts';
import { remembered } from '../remembered.ts';
import { tapesOf } from '../units/tape.ts';
import { blankToCut } from './amount.ts';
import { isOrderOf, plainOrder } from './bend-order.ts';
import { isSymmetricHoop } from './symmetric.ts';
import type { SolvedTube } from './types.ts';

/** With the marking as it can be used on this tube: from the middle where the tube is no symmetric hoop it is from end A. */
export interface Feed extends Marking {
  /** The tape's division that marks are rounded to, mm. */
  readonly step: number;
  /** Every bend once, in the order of bending. */
  readonly order: readonly BendStep[];
  /** Where the order stands: in the tube's bend run, in its entry in the job, or nowhere. */
  readonly orderFrom: 'run' | 'tube' | 'plain';
  /** The order in which the marks come. */
  readonly plain: readonly BendStep[];
  /** The order that the job keeps for the tube holds not every bend once, and is not used. */
  readonly outdated: boolean;
  /** What of the blank is left at end A and at end B for the machine to hold, mm; scrap, cut off after bending. */
  readonly grip: readonly [number, number];
  /** To cut, mm: the tube's blank and the grip. */
  readonly cutLength: number;
}

type Fed = Pick<Job, 'bent' | 'feeds' | 'marking' | 'lengthUnit'>;

/** Total. The same object as long as the tube, the marking, the unit and what the job holds of the tube are the same. */
export function feedOf({ bent, feeds, marking = FIRST_MARKING, lengthUnit }: Fed, tube: SolvedTube): Feed {
  const run = runOf(bent).get(tube.id);
  // A tube that stands as it came out was cut for the drawing.
  if (run?.stands && tube.held === null && tube.asDrawn !== null)
    return feedOf({ bent, feeds, marking, lengthUnit }, tube.asDrawn);
  const by = [marking, lengthUnit, run?.order, ownOf(feeds).get(tube.id)] as const;
  const before = known.get(tube);
  if (before?.by.every((each, i) => each === by[i])) return before.feed;
  const feed = worked(tube, ...by);
  known.set(tube, { by, feed });
  return feed;
}

const known = new WeakMap<SolvedTube, { readonly by: readonly unknown[]; readonly feed: Feed }>();

// Every row of the list of tubes asks for its own.
const runOf = remembered((runs: readonly BentTube[]) => new Map(runs.map((run) => [run.tube, run])));
const ownOf = remembered((feeds: readonly TubeFeed[]) => new Map(feeds.map((feed) => [feed.tube, feed])));

function worked(
  tube: SolvedTube,
  marking: Marking,
  unit: LengthUnit,
  inRun: readonly BendStep[] | undefined,
  own: TubeFeed | undefined,
): Feed {
  const asked = own?.from ?? marking.from;
  const from = asked === 'middle' && !isSymmetricHoop(tube) ? 'A' : asked;
  const plain = plainFeed(tube, from);
  const holds = (order: readonly BendStep[] | undefined) => order !== undefined && isOrderOf(order, tube.bends.length);
  const [order, orderFrom] = holds(inRun)
    ? ([inRun!, 'run'] as const)
    : holds(own?.order)
      ? ([own!.order!, 'tube'] as const)
      : ([plain, 'plain'] as const);
  const { blank: cutLength, grip } = blankToCut(tube, order);
  const outdated = own?.order !== undefined && !holds(own.order);
  const { mark, fine } = marking;
  return { from, mark, fine, step: tapesOf(unit)[fine ? 1 : 0], order, orderFrom, plain, outdated, grip, cutLength };
}

/** The order in which the marks come when the tape is hooked over this end, on the tube's own bender. */
export const plainFeed = ({ bends, die }: SolvedTube, from: Marking['from']): readonly BendStep[] =>
  plainOrder(bends.length, from, (die?.bender ?? FIRST_BENDER).bendLies);
