/** What is measured at the car, in words: places and tapes as the paper and the walk call them, and how the car is set up for it. */
import type { Axis } from '../geometry/vector.ts';
import { shownName } from '../job/shown.ts';
import { sideInName } from '../survey/point-pairs.ts';
import type { Place, Side, SideOfPlace, Step } from '../survey/to-measure.ts';
import { capital } from './lists.ts';
import { SPOT_WORDS } from './starters.ts';
import { COORDINATE_WORDS } from './survey.ts';

/** What the walk is called. */
export const AT_THE_CAR = 'Measure at the car';

export const LEVEL_FIRST = 'Level the car first, then:';

/** How the car is made ready, after LEVEL_FIRST. */
export const SET_UP = [
  'Snap a centreline on the shop floor, midway between left and right of the car, and a cross line square to it at the hoop. Where they meet is zero, of heights too: the datum.',
  'Measure the floor where the feet of the main hoop will stand: along from the cross line, off the centreline, up from the datum.',
  'Then what is above it and in front of it, pillars, roof rail and windscreen, and the rear towers. Of each thing take one spot, mark it, and run every tape to that mark.',
  'Both sides. A body is seldom the same left and right.',
] as const;

/** Which way is plus. */
export const SIGNS = 'Along is plus forward, offset is plus to the left, height is plus up.';

const SIDE_LETTERS: Readonly<Record<Side, string>> = { left: 'L', right: 'R', middle: '' };

/** "4 L"; in the middle of the car "4". */
export const placeMark = ({ number }: Place, { side }: SideOfPlace): string =>
  side === 'middle' ? String(number) : `${number} ${SIDE_LETTERS[side]}`;

/** The place without its side: as its point is called, else by where it is. */
export function placeName({ spot, sides }: Place): string {
  const named = sides.find(({ point }) => point !== null)?.point;
  return named ? shownName(withoutSide(named.name)) : SPOT_WORDS[spot!];
}

const SIDE_WORD = /[\s,(–-]*(?<![\p{L}\p{N}])(?:left|right|lh|rh|l|r)(?![\p{L}\p{N}])\)?/iu;

/** A point's name without the word that tells its side; a name that tells none as it is. */
export const withoutSide = (name: string): string =>
  sideInName(name) === null
    ? name
    : name
        .replace(SIDE_WORD, '')
        .trim()
        .replace(/^[,\s]+/u, '') || name;

/** As a point is called that is read there for the first time: "Rear tower, left". */
export const newPointName = ({ spot }: Place, { side }: SideOfPlace): string => `${SPOT_WORDS[spot!]}, ${side}`;

/** "Rear tower, left" */
export const sideOfPlaceName = (place: Place, on: SideOfPlace): string =>
  on.point === null ? newPointName(place, on) : shownName(on.point.name);

const WHERE: Readonly<Record<Axis, string>> = {
  x: 'along from the cross line',
  y: 'off the centreline',
  z: 'up from zero',
};

/** Where the figure has a minus; of a place that has a side its offset has none. */
export function minusInWords(step: Step): string {
  if (step.kind === 'tape') return '';
  if (step.axis === 'x') return 'Behind the cross line with a minus.';
  if (step.axis === 'z') return 'Below zero with a minus.';
  return step.on.side === 'middle' ? MIDDLE_SIGN : `To the ${step.on.side}, without a minus.`;
}

/** Of a place in the middle of the car. */
export const MIDDLE_SIGN = 'To the left is plus, to the right with a minus.';

/** Nobody reads along a slant. */
export const READ_LEVEL =
  'Read along and offset level, by a plumb line where the place is high up, never along a slanting tape.';

export const TAPES_ACROSS = 'Tapes across';

/** "Height, up from zero"; "Tape, 4 L to 3 R". */
export function stepName(step: Step): string {
  if (step.kind === 'coordinate') {
    return `${capital(COORDINATE_WORDS[step.axis])}, ${WHERE[step.axis]}`;
  }
  return step.from[0] === step.to[0]
    ? 'Width, left to right'
    : `Tape, ${placeMark(...step.from)} to ${placeMark(...step.to)}`;
}

/** Where the figure is read: "Rear tower, left"; of a tape between places "Rear tower, left to Roof rail at the hoop, right". */
export function stepPlace(step: Step): string {
  if (step.kind === 'coordinate') return sideOfPlaceName(step.place, step.on);
  return step.from[0] === step.to[0]
    ? placeName(step.from[0])
    : `${sideOfPlaceName(...step.from)} to ${sideOfPlaceName(...step.to)}`;
}
