/** What is cut: the blank, the lengths that shops cut by, and where the tape is hooked to mark it. */
import type { Marking } from '../job/kinds/marking.ts';

export const CUT_TO = 'Cut the blank to';

/** In its place for a tube that cannot be made. */
export const AS_DRAWN = 'Blank by the drawing';

/** As core/cope/end-cut.ts gives them, and from sharp corner to sharp corner. */
export const LENGTH_NAMES = {
  tips: 'Tip to tip',
  throats: 'Throat to throat',
  axis: 'Node to node, along tube',
  corners: 'Corner to corner',
} as const;

/** Where the tape's zero is, before and after the length from end A to it; that of an end is the end. */
export const zeroOfTape = (from: Marking['from']): readonly [string, string] =>
  from === 'middle'
    ? ['Draw a line round the tube ', ' from the blank’s end A, and measure both ways from it.']
    : [`Hook the tape over the blank’s end ${from}: that is zero.`, ''];
