/**
 * Where on a tube's end a cut's deep-bite side stands, told so that it can be marked on the tube: from a line that runs along it to a
 * mark, round the surface. Nothing is turned: the mark is put on the tube, and goes to where the saw bites deepest.
 *
 * The line is the end's reference: along the inside of the nearest bend, or the one scribed along a straight tube. One looks at the
 * cut end, towards the tube, which is along the end's direction: right-hand about it is clockwise so seen.
 */
import { signedAngle, toDegrees, toRadians, wrapHalfTurn, type Radians } from '../geometry/angle.ts';
import { ANGLE_ROUNDING } from '../geometry/tolerance.ts';
import { dot, length, normalize, rejectFrom, scale } from '../geometry/vector.ts';
import type { Cut, SolvedTube } from '../solve/types.ts';
import { insideInWords, lineName, listed, turnInWords } from './ends.ts';

export interface EndMark {
  /** From the line, clockwise positive as one looks at the cut end, towards the tube; (-pi, pi]. */
  readonly turn: Radians;
  /** The same round the surface, mm, no sign: degrees x OD x pi / 360. */
  readonly round: number;
  /** A square cut bites as deep opposite the mark. */
  readonly both: boolean;
}

/** Where the acute, deep-bite side of a cut of this tube stands. */
export const deepSide = (tube: SolvedTube, { clocking, offSquare }: Cut): EndMark =>
  markAt(tube, clocking, Math.abs(toDegrees(offSquare)) < SQUARE);

/** Where an end that is cut by its plate's plane is longest; null where it is cut square. */
export function longSide(tube: SolvedTube, which: 0 | 1): EndMark | null {
  const { plateNormal, direction, reference } = tube.ends[which];
  if (plateNormal === null) return null;
  // The wall ends where it meets the plane: s = -r (e . n) / (u . n), least where e is along the part of n square to u.
  const into = scale(plateNormal, dot(plateNormal, direction) < 0 ? -1 : 1);
  const leans = rejectFrom(into, direction);
  if (length(leans) < ANGLE_ROUNDING) return null;
  return markAt(tube, signedAngle(reference, normalize(leans), direction), false);
}

const markAt = ({ section }: SolvedTube, turn: Radians, both: boolean): EndMark => ({
  turn,
  round: (Math.abs(turn) * section.outerDiameter) / 2,
  both,
});

/** Degrees off square that are shown as 0.0. */
const SQUARE = 0.05;

/** mm. An offset that no tape shows. */
const UNSEEN = 0.005;

/** From which line every mark of an end is counted, and how it is found, as a sentence. */
export function lineInWords(tube: SolvedTube, which: 0 | 1): string {
  if (tube.bends.length > 0) return `Inside line: the ${insideInWords(tube, which)}, run on along the tube to here.`;
  const [endA, endB] = tube.ends;
  const first = endA.cuts.length > 0 ? 'A' : endB.cuts.length > 0 ? 'B' : null;
  if (first === null) return 'Scribed line: along the whole tube, on the side nearest straight up in the car.';
  const here = first === (which === 0 ? 'A' : 'B');
  return here
    ? 'Scribed line: along the whole tube; the first cut’s deep-bite side stands on it.'
    : `Scribed line: the one along the whole tube, on which end ${first}’s first deep-bite side stands.`;
}

/** How one stands for the marks of an end, as a sentence. */
export const lookInWords = (which: 0 | 1): string => `Look at cut end ${which === 0 ? 'A' : 'B'}, towards the tube.`;

/** What is at the mark, before how far it is. */
export const deepSideOf = (tube: SolvedTube): string => `Deep-bite side, from ${lineName(tube)}`;
export const longSideOf = (tube: SolvedTube): string => `Longest side, from ${lineName(tube)}`;
export const ROUND = 'Round tube';

/** "35.0° clockwise", "on the line", "opposite the line". */
export function markInWords({ turn }: EndMark): string {
  const words = turnInWords(turn);
  return words === '0°' ? 'on the line' : words === '180°' ? 'opposite the line' : words;
}

/** What a mark on one side alone would leave out; null where nothing. */
export const bothInWords = ({ both }: EndMark): string | null =>
  both ? 'Square to its run: it bites as deep on the opposite side.' : null;

/** On which side of the run this tube passes; null where the axes meet. Right is along direction x acute side. */
export const offsetInWords = ({ axisOffset }: Cut): string | null =>
  Math.abs(axisOffset) < UNSEEN
    ? null
    : `Offset: this tube’s axis passes on the ${axisOffset > 0 ? 'right' : 'left'} of the run’s, looking at the cut end, towards the tube, with the deep-bite side up.`;

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
