/** The marks of a cut end in words: the line they count from, how one stands, what stands there. */
import { deepSide, type EndMark } from '../cope/end-mark.ts';
import { toRadians, wrapHalfTurn, type Radians } from '../geometry/angle.ts';
import type { Cut, SolvedTube } from '../solve/types.ts';
import { insideInWords, lineName, turnInWords, UNSEEN } from './ends.ts';
import { listed } from './lists.ts';

/** From which line every mark of an end is counted, and how it is found, as a sentence. */
export function lineInWords(tube: SolvedTube, which: 0 | 1): string {
  if (tube.bends.length > 0) return `Inside line: along the ${insideInWords(tube, which)}, on to here.`;
  const [endA, endB] = tube.ends;
  if (endA.cuts.length === 0 && endB.cuts.length === 0)
    return 'Scribed line: on the side nearest straight up in the car.';
  return which === 0 || endA.cuts.length === 0
    ? 'Scribed line: along the uncut tube, anywhere.'
    : 'Scribed line: the one from end A.';
}

/** How one stands for the marks of an end, as a sentence. */
export const lookInWords = (which: 0 | 1): string => `Look at end ${which === 0 ? 'A' : 'B'}, towards the tube.`;

/** What is at the mark, before how far it is. */
export const longSideOf = (tube: SolvedTube): string => `Longest side, from ${lineName(tube)}`;
export const ROUND = 'Round tube';

/** "35.0° clockwise", "on the line", "opposite the line". */
export function markInWords({ turn }: EndMark): string {
  const words = turnInWords(turn);
  return words === '0°' ? 'on the line' : words === '180°' ? 'opposite the line' : words;
}

/** What a mark on one side alone would leave out; null where nothing. */
export const bothInWords = ({ both }: EndMark): string | null =>
  both ? 'Square to the run tube: it bites as deep on the opposite side.' : null;

/** On which side of the run tube this tube passes; null where the axes meet. Right is along direction x acute side. */
export const offsetInWords = ({ axisOffset }: Cut): string | null =>
  Math.abs(axisOffset) < UNSEEN
    ? null
    : `Offset: this tube’s axis passes on the ${axisOffset > 0 ? 'right' : 'left'} of the run tube’s, looking at the end, towards the tube, with the mark up.`;

/**
 * What the deep-bite side and the throat of a coped end are, where the two stand apart: what the saw is set by, and the deepest point
 * of the real curve, which lies at `phi`. Null where they are one.
 */
export function throatInWords(tube: SolvedTube, which: 0 | 1, phi: Radians): string | null {
  const { cuts } = tube.ends[which];
  const marks = cuts.map((cut) => deepSide(tube, cut));
  const apart = marks.flatMap(({ turn, both }) =>
    (both ? [turn, turn + Math.PI] : [turn]).map((each) => Math.abs(wrapHalfTurn(phi - each))),
  );
  if (apart.length === 0 || Math.min(...apart) <= ONE_PLACE) return null;
  const [what, here] = cuts.some(({ onBend }) => onBend)
    ? ['deepest on a straight run', 'deepest on this bend']
    : ['sets the saw', 'deepest point of the whole cut'];
  const sides = listed(marks.map(({ turn }) => turnInWords(turn)));
  return `Deep-bite side ${sides}: ${what}. Throat ${turnInWords(phi)}: ${here}.`;
}

/** Deep-bite side and throat nearer to each other than this are not told apart. */
const ONE_PLACE: Radians = toRadians(0.5);
