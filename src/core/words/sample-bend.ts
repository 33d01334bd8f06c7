/** What a sample bend tells, in the words of the shop. */
import { toDegrees } from '../geometry/angle.ts';
import type { Sample } from '../job/kinds/sample.ts';
import type { FittedBend, NoBend } from '../survey/sample-bend.ts';
import { formatAngle } from '../units/angle.ts';
import { formatLength, type LengthUnit } from '../units/length.ts';

/** What is missing, or wrong, and what to do. */
export const NO_BEND_WORDS: Readonly<Record<NoBend, string>> = {
  'no-gap': 'Read at least one gap at the roof and one at the pillar; two at each tell the angles.',
  'same-place': 'Two gaps of a leg are read in one place. Read them a hand or more apart.',
  'no-corner': 'With these gaps roof and pillar make no corner. Look whether a gap was read at the other leg.',
};

/** A line each: the bend, where it begins, the air at the rail, and how sure the angle is. */
export function sampleInWords(sample: Sample, found: FittedBend, unit: LengthUnit): readonly string[] {
  const show = (mm: number): string => `${formatLength(mm, unit).text} ${unit}`;
  const degrees = (angle: number): string => `${formatAngle(toDegrees(angle), 1)}°`;
  const sure =
    found.deviation === null
      ? 'One leg was read at one place alone: it is taken to lie along its side of the car. A second gap would tell.'
      : `Two of three such readings come within ${degrees(found.deviation)} of it.`;
  const turn = (leg: 'roof' | 'pillar'): string => {
    const off = found.off[leg];
    if (Math.abs(toDegrees(off)) < SEEN) return `the ${leg} leg lies along the ${leg}`;
    return `going away from the bend the ${leg} ${off > 0 ? 'comes' : 'falls'} ${degrees(Math.abs(off))} ${off > 0 ? 'nearer to' : 'away from'} its leg`;
  };
  return [
    `Bend ${degrees(found.angle)}: ${turn('roof')}, ${turn('pillar')}. ${sure}`,
    `With ${show(sample.air)} of air the bend begins ${show(found.fromCorner)} along the roof before the corner where roof and pillar would meet, and ends as far down the pillar.`,
    ...(found.railAir === null
      ? []
      : [
          found.railAir < 0
            ? `It would stand ${show(-found.railAir)} into the rail: take more air, or a larger radius.`
            : `${show(found.railAir)} of air is left at the rail.`,
        ]),
  ];
}

/** Degrees: less is no turn to anybody. */
const SEEN = 0.05;
