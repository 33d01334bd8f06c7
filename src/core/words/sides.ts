/** Left and right in sentences: what the measured points differ by from side to side. */
import { UNSEEN } from '../checks/limits.ts';
import type { Vec3 } from '../geometry/vector.ts';
import type { Point } from '../job/kinds/point.ts';
import type { Followed } from '../shape/followed.ts';
import { pairsOfPoints } from '../survey/point-pairs.ts';
import { meanDifference, type Alone } from '../survey/unpaired.ts';
import { shownName } from '../job/shown.ts';
import type { LengthUnit } from '../units/length.ts';
import { comparedLength } from './lengths.ts';
import { listed } from './lists.ts';

/** What a member follows, after "follows". */
export const FOLLOWED_WORDS: Readonly<Record<Followed, string>> = {
  left: 'the left points',
  right: 'the right points',
  mean: 'the mean of both sides',
};

const RIGHT_IS = [
  ['further forward', 'further back'],
  ['wider', 'narrower'],
  ['higher', 'lower'],
] as const;

/** "On average of 9 pairs the right side is 2.1 mm wider and 0.8 mm lower."; null without a pair. */
export function asymmetryInWords(points: readonly Point[], unit: LengthUnit): string | null {
  const { pairs } = pairsOfPoints(points);
  const mean = meanDifference(points);
  if (mean === null) return null;
  const parts = differencesInWords(mean, unit, UNSEEN);
  const of = pairs.length === 1 ? 'By the one pair' : `On average of ${pairs.length} pairs`;
  return `${of} the right side is ${parts === '' ? `the mirror image of the left, to ${comparedLength(UNSEEN, unit)}` : parts}.`;
}

/** "2.1 mm wider and 0.8 mm lower": forward, outward and up, as the right side has it; without what is under `least` mm, and nothing where all is. */
export const differencesInWords = (differs: Vec3, unit: LengthUnit, least: number): string =>
  listed(
    ([1, 0, 2] as const).flatMap((axis) => {
      const by = differs[axis];
      return Math.abs(by) < least ? [] : [`${comparedLength(Math.abs(by), unit)} ${RIGHT_IS[axis][by > 0 ? 0 : 1]}`];
    }),
  );

/** Why the point has no pair, after its name. */
export function aloneInWords(alone: Alone, unit: LengthUnit): string {
  switch (alone.why) {
    case 'centre':
      return 'stands on the centre plane and needs none';
    case 'none-near':
      return 'no point lies near its mirror image';
    case 'same-side':
      return `${shownName(alone.named.name)} lies on the same side of the car: is a minus sign missing?`;
    case 'too-far':
      return `${shownName(alone.named.name)} lies ${comparedLength(alone.off, unit)} from its mirror image, too far for a pair: measure both again, or say where the car’s axes are if it stands askew to the lines`;
  }
}

/** Under a picture of the differences. */
export const timesInWords = (times: number): string =>
  `Arrows go from the mirror image of the left point to the right point${times === 1 ? '' : `, drawn ${times} times as long as they are`}. Numbers are those of the table.`;

/** "left and mean": by which points of a pair the frame goes. */
export const goesByInWords = (sides: ReadonlySet<Followed>): string => listed([...sides]);
