/** What a wrap template says, in the words of the shop. */
import { plateOffSquare } from '../../core/cope/end-cut.ts';
import { toDegrees } from '../../core/geometry/angle.ts';
import { endInWords, insideInWords, numbered, referenceInWords, scribeInWords } from '../../core/words/ends.ts';
import type { Wrap } from '../../core/cope/wrap.ts';
import type { Derived } from '../../core/derive.ts';
import { landedOn } from '../../core/solve/bar-tubes.ts';
import { feedOf } from '../../core/solve/feed.ts';
import type { Frame, SolvedTube } from '../../core/solve/types.ts';
import { capital } from '../../core/words/lists.ts';
import { formatAngle } from '../../core/units/angle.ts';
import { formatLength, type LengthUnit } from '../../core/units/length.ts';

/** One end of one tube. */
export interface EndOf {
  readonly tube: SolvedTube;
  readonly which: 0 | 1;
}

export const endsOf = (frame: Frame): EndOf[] =>
  frame.tubes.flatMap((tube) => ([0, 1] as const).map((which) => ({ tube, which })));

export const letterOf = ({ which }: EndOf): 'A' | 'B' => (which === 0 ? 'A' : 'B');

/** "12 B": the inspector's number and the end. */
export const endMark = (end: EndOf): string => `${end.tube.number} ${letterOf(end)}`;

/** To the tenth of a millimetre, or the thirty-second of an inch, with the unit. */
export const lengthInWords = (mm: number, unit: LengthUnit): string => `${formatLength(mm, unit).text} ${unit}`;

const degreesInWords = (radians: number): string => `${formatAngle(toDegrees(radians), 1)}°`;

/** "coped to 1 Main hoop and 2 Rear stay (left)", "cut to its plate, 1.4° off square", "cut square". */
export function fitInWords(frame: Frame, { tube, which }: EndOf): string {
  const end = tube.ends[which];
  // Tubes by number and name, as they are chalked in the shop.
  const fit = endInWords(frame, end, numbered);
  return end.plateNormal !== null ? `${fit}, ${degreesInWords(plateOffSquare(end))} off square` : fit;
}

/** For each cut: which angle is which. Empty where there is none. */
export const anglesInWords = (frame: Frame, { tube, which }: EndOf): string[] =>
  tube.ends[which].cuts.map((cut) => {
    const runTube = landedOn(frame.byId, cut);
    const angles = `included ${degreesInWords(cut.includedAngle)}, off square ${degreesInWords(cut.offSquare)}`;
    return `To ${runTube.number}: ${angles}${cut.onBend ? ', on its bend' : ''}.`;
  });

/** What phi = 0 is: "0° is the inside line, on the inside of bend 1", and on a straight tube how that line is found. */
export function zeroInWords({ tube, which }: EndOf): string {
  const scribe = scribeInWords(tube);
  const line = referenceInWords(tube, which);
  return scribe === null ? `0° is the ${line}` : `0° is the ${line}: ${scribe}`;
}

/** Short enough to stand beside the line itself. */
export const zeroLabel = ({ tube, which }: EndOf): string =>
  tube.bends.length === 0 ? '0° scribed line' : `0° inside line, ${insideInWords(tube, which)}`;

export const surfaceInWords = (surface: Wrap['surface']): string =>
  surface === 'outer'
    ? 'Cut line: where the outer surface ends, for a cut that follows the run tube.'
    : 'Cut line: for a cut square to the wall, clear of both its faces.';

/** The end that a wrap is laid by; one that the clamp has grip at is sawn once more after bending. */
export const sawnEnd = ({ job }: Derived, { tube, which }: EndOf): string =>
  feedOf(job, tube).grip[which] > 0 ? 'the sawn end after the grip is off' : 'the sawn end';

/** `sawn`: as sawnEnd names it. */
export function lowerEdgeInWords(wrap: Wrap, sawn: string, unit: LengthUnit): string {
  const beyond = wrap.lower - wrap.blankEnd;
  return beyond > 0.05
    ? `${capital(sawn)} lies ${lengthInWords(beyond, unit)} beyond this edge`
    : `This edge flush with ${sawn}`;
}

export const upperEdgeInWords = (wrap: Wrap, sawn: string, unit: LengthUnit): string =>
  `Upper edge: square, ${lengthInWords(wrap.baseline - wrap.blankEnd, unit)} from ${sawn}, ${lengthInWords(wrap.baseline, unit)} from the node.`;
