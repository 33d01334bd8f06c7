/** How a car stands over the lines that it was measured from, and where its own axes are, in words. */
import type { NoDatum } from '../survey/datum.ts';
import type { Standing } from '../survey/adjust.ts';
import { formatAngle } from '../units/angle.ts';

export const NO_DATUM_WORDS: Readonly<Record<NoDatum, string>> = {
  'level-twice': 'A level plane wants three different points.',
  'centre-twice': 'The centre line wants two different places.',
  'not-measured': 'Only points that come of measurements can say where the car’s axes are.',
};

/** "The car stands 0.4° nose down, 0.2° right side down and 1.1° nose to the left of the lines." */
export function standsInWords({ turns: [yaw, pitch, roll] }: Standing): string {
  const part = (angle: number, plus: string, minus: string): readonly string[] =>
    Math.abs(angle) < SEEN ? [] : [`${formatAngle(Math.abs(angle), 1)}° ${angle > 0 ? plus : minus}`];
  const parts = [
    ...part(pitch, 'nose down', 'nose up'),
    ...part(roll, 'right side down', 'left side down'),
    ...part(yaw, 'nose to the left', 'nose to the right'),
  ];
  return parts.length === 0
    ? 'The car stands square to the lines, within a twentieth of a degree.'
    : `The car stands ${parts.join(', ')}.`;
}

/** Degrees. */
const SEEN = 0.05;
