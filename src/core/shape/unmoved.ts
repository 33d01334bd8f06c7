/** An edit that is to leave every node where it is: made, or refused in words that name the node that would move. */
import type { Edited } from '../edit/records.ts';
import { fault } from '../job/fault.ts';
import type { Job } from '../job/types.ts';
import { nodeName } from '../solve/names.ts';
import type { Frame } from '../solve/types.ts';
import { nodeMoves } from './node-moves.ts';

/** The job, where all nodes that it has in common with the frame are in their places there to within rounding; else why not. */
export function unmoved(frame: Frame, changed: Job): Edited {
  const moves = nodeMoves(frame, changed);
  if (!moves.ok) return moves.faults;
  const [first] = moves.value;
  if (first === undefined) return changed;
  return [fault('', `${nodeName(frame.job, first.node)} would not stay where it is: place it another way first`)];
}
