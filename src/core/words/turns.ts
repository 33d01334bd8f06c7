/**
 * How a tube is turned before a bend, in words: the same for sheet, Shop, bend run and rehearsal. They say what is turned, which way and
 * seen from where, from which zero, and each way to read it off, so that none of it has to be guessed.
 */
import { toDegrees, type Degrees } from '../geometry/angle.ts';
import type { BendStep } from '../job/kinds/bent.ts';
import { isScribed, scribedLineAt } from '../run/scribed-line.ts';
import type { Section } from '../job/kinds/section.ts';
import { isSeamed } from '../springback/steels.ts';
import type { SolvedTube } from '../solve/types.ts';
import { formatAngle } from '../units/angle.ts';
import { turnInWords } from './ends.ts';
import { formatLength, type LengthUnit, type ShownLength } from '../units/length.ts';
import type { RotationReading } from '../run/rotation-reading.ts';
import { NOTABLE_ANGLE } from '../marks/tape.ts';

/** Before the first bend: how the tube is laid, and the line scribed along it where the order turns it. Common practice: a seam on neither side of the bend that stretches or is pressed. */
export function firstBendInWords(section: Section, isTurned: boolean): string {
  const lay = isSeamed(section) ? SEAM : 'Lay the tube any way round for the first bend';
  return isTurned ? `${lay}, and scribe a line along its top, end to end.` : `${lay}.`;
}

const SEAM = 'Lay the tube with its seam to the side of the first bend, half-way round between inside and outside';

/** Where the seam then is at a later bend; null of tube without one. The scribed line, on top of a level bend, is as far round from the bend's side as a seam that was laid there. */
export function seamInWords(section: Section, { line }: RotationReading): string | null {
  if (!isSeamed(section)) return null;
  const off = formatAngle(Math.min(Math.abs(line), 180 - Math.abs(line)), 0);
  return Number(off) === 0
    ? 'Its seam is to the side of this bend too.'
    : `Its seam is ${off}° round from the side of this bend.`;
}

/** Which end is in front for the first bend, and what that is. */
export const inFront = (end: 'A' | 'B'): string => `End ${end} in front, through the die first.`;

/** Between bends that are made with different ends in front. */
export const END_FOR_END = 'Turn the tube end for end';

/** What the sign of a rotation means, wherever one is shown: the same from either end, since the order of the bends turns about too. */
export const ROTATION_SIGN =
  'Rotation: look along the straight between the two bends, from either end. Plus: the far leg stands clockwise of the near one.';

/** "Turn the tube 21.4° anticlockwise": what is turned is the whole tube. */
function turnInShort({ turn, sense, asItLies }: RotationReading): string {
  if (turn === 0) return asItLies ? 'Do not turn the tube' : 'Turn the tube to zero and no further';
  if (sense === null) return 'Turn the tube half round, 180°, either way';
  return `Turn the tube ${onScale(turn)}° ${sense}`;
}

/** With where it is seen from. */
export const turnSentence = (reading: RotationReading): string =>
  reading.sense === null
    ? `${turnInShort(reading)}.`
    : `${turnInShort(reading)}, looking from behind (end ${reading.seenFrom}’s side) towards the die.`;

/** From where the turn counts, and where the leg then points. */
export function zeroInWords(reading: RotationReading): string {
  const { zeroOn, legTo, assumed, asItLies, turn } = reading;
  const zero = asItLies
    ? `Zero: bend ${zeroOn} level, its leg to the ${legTo}, as it comes off the die`
    : `Zero: lay bend ${zeroOn} level, its leg to the ${legTo} (a level along the leg shows 0°)`;
  const other = legTo === 'left' ? 'right' : 'left';
  return [
    `${zero}${turn === 0 ? '' : `; turned, it points ${legPoints(reading)}`}.`,
    ...(assumed
      ? [
          `No bender is set up: this is for one that bends to the ${legTo}. On one that bends to the ${other} the leg begins there.`,
        ]
      : []),
  ].join(' ');
}

/** Clockwise takes what is on the left over the top, and what is on the right underneath. */
function legPoints({ turn, sense, legTo }: RotationReading): string {
  const other = legTo === 'left' ? 'right' : 'left';
  if (sense === null) return `level to the ${other}`;
  const way = (sense === 'clockwise') === (legTo === 'left') ? 'up' : 'down';
  if (turn === 90) return `straight ${way}`;
  return `${way} to the ${turn < 90 ? legTo : other}`;
}

/** What level or wheel shows, and where it sits; of a tube that is turned. */
export function readerInWords({ by, sits, reads, pastPlumb, alongLeg, off }: RotationReading): string {
  const lost = Math.abs(off) > NOTABLE_OFF ? ` ${formatAngle(Math.abs(off), 2)}° is lost in rounding.` : '';
  const leg = alongLeg === null ? null : `laid along the leg, to ${onScale(alongLeg)}°`;
  if (sits === null) {
    const none = 'The machine leaves no straight in the feed for a bar or a wheel';
    return `${none}: ${leg === null ? 'go by the scribed line' : `a level, from 0°; ${leg}`}.${lost}`;
  }
  const { where, before } = sits;
  const place = `${where === 'behind' ? 'behind the die' : 'in front of the clamp'}${before === null ? '' : `, short of bend ${before},`}`;
  const goes = `goes from 0°${pastPlumb ? ', past plumb,' : ''} to ${onScale(reads)}°`;
  const also = leg === null ? '' : `; ${by === 'level' ? '' : 'a level '}${leg}`;
  const what = by === 'level' ? 'level on a bar across the tube' : 'degree wheel on the tube';
  return `A ${what} ${place} ${goes}${also}.${lost}`;
}

/** Where the line comes to stand that was scribed before the first bend. */
export function lineInWords({ line, lineRound }: RotationReading, unit: LengthUnit): string {
  const scribed = 'The scribed line then';
  const shown = formatAngle(Math.abs(line), 1);
  if (Number(shown) === 0) return `${scribed} is on top.`;
  if (Number(shown) === 180) return `${scribed} is underneath.`;
  const sense = line > 0 ? 'clockwise' : 'anticlockwise';
  return `${scribed} stands ${shown}° ${sense} of the top, ${roundLength(lineRound, unit)} round.`;
}

/** Where the scribed line stands at an end, after the sentence on the inside line (cope-mark.ts); null where no line is scribed along a bent tube. */
export function scribedInWords(
  tube: SolvedTube,
  order: readonly BendStep[],
  which: 0 | 1,
  unit: LengthUnit,
): string | null {
  const turn = scribedLineAt(tube, order, which);
  if (turn === null || !isScribed(tube, order)) return null;
  const words = turnInWords(turn);
  const round = `${roundLength((Math.abs(turn) * tube.section.outerDiameter) / 2, unit)} round`;
  const stands =
    words === '0°'
      ? 'stands on it'
      : words === '180°'
        ? `stands opposite it, ${round}`
        : `stands ${words} of it, ${round}`;
  const bender = tube.die?.bender === undefined ? ' on a bender that bends to the left' : '';
  return `The scribed line${bender} ${stands}.`;
}

/** All that is said of a turn, sentence by sentence; where nothing is turned, no way to read it. */
export const turnSentences = (reading: RotationReading, unit: LengthUnit): readonly string[] => [
  turnSentence(reading),
  zeroInWords(reading),
  ...(reading.turn === 0 ? [] : [readerInWords(reading)]),
  lineInWords(reading, unit),
];

/** A length round a tube's surface as it is shown: to 1/64 in or 0.1 mm, less than half a degree on the tubes of a cage. */
export const shownRound = (mm: number, unit: LengthUnit): ShownLength =>
  formatLength(mm, unit, unit === 'in' ? 1 / 64 : 0.1);

/** The same in a sentence, with its unit. */
const roundLength = (mm: number, unit: LengthUnit): string => `${shownRound(mm, unit).text} ${unit}`;

/** An angle on a scale: no more digits than it has. */
export const onScale = (degrees: Degrees): string => String(Number(degrees.toFixed(2)));

/** Degrees that rounding may cost before it is worth saying. */
const NOTABLE_OFF = toDegrees(NOTABLE_ANGLE);
