/** Which radius the marks of a tube follow, in words: the question, and what each answer makes of the tube. */
import type { RadiusAnswer } from '../run/radius-answers.ts';
import { NOTABLE_LENGTH } from '../marks/tape.ts';
import { formatLength, type LengthUnit } from '../units/length.ts';
import { capital } from './lists.ts';
import { differsInWords, movedInWords } from './run.ts';
import { RADIUS_BY } from './shop.ts';

export const ASK_RADIUS = 'Radius that the marks follow';

/** "As the die says, 6 in: end B comes out 11/16 in from its place, end A held, overall width, along both ends, 5/8 in more." */
export function answerInWords({ radius, radii, endMoves, width, wider }: RadiusAnswer, unit: LengthUnit): string {
  const [least, greatest] = radii.map((each) => formatLength(each, unit).text);
  const size = least === greatest ? `${least} ${unit}` : `${least} to ${greatest} ${unit}`;
  const off =
    endMoves > NOTABLE_LENGTH ? `end B comes out ${movedInWords(endMoves, unit)} from its place, end A held` : '';
  const more = Math.abs(wider) > NOTABLE_LENGTH ? differsInWords(width, wider, unit) : '';
  const does = [off, more].filter((words) => words !== '').join('; ');
  return `${capital(RADIUS_BY[radius])}, ${size}: ${does === '' ? 'it comes out as drawn' : does}.`;
}

/** `others`: how many other bent tubes the die makes. */
export const ofWhichDie = (die: string, others: number): string =>
  others === 0
    ? ''
    : `It counts for all that is bent on ${die}: ${others === 1 ? '1 other tube is' : `${others} other tubes are`} marked by it too.`;

/** While it is not answered. */
export const NOT_ANSWERED =
  'By its pulls the bends come out wider than the die. Say before anything is cut which of the two is marked.';

/** Under the key that begins. */
export const ANSWER_FIRST = 'First say above which radius the marks follow.';

/** Once steel is cut. */
export const NOT_ANSWERED_YET =
  'By the pulls since, bends come out wider than the die. What is not bent yet can still be marked by them.';
