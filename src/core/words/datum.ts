/** How a car stands over the lines that it was measured from, and where its own axes are, in words. */
import type { Hold } from '../job/kinds/hold.ts';
import type { Job } from '../job/types.ts';
import { pointName } from '../solve/names.ts';
import type { NoDatum } from '../survey/datum.ts';
import type { Standing } from '../survey/adjust.ts';
import { formatAngle } from '../units/angle.ts';
import { COORDINATE_WORDS } from './survey.ts';

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
    : `The car stands ${parts.join(', ')} over the lines.`;
}

/** Degrees. */
const SEEN = 0.05;

/** Of a car that is not said to stand askew. */
export const SQUARE_TO_LINES = 'The lines on the floor are taken as the car’s own: zero where they cross.';

const COUNTS = ['none', 'one', 'two', 'three', 'four', 'five'] as const;

/** "The car’s axes are not laid: five of six coordinates are held." `held`: fewer than six. */
export const notLaidInWords = (held: number): string =>
  `The car’s axes are not laid: ${COUNTS[held]} of six coordinates ${held === 1 ? 'is' : 'are'} held.`;

/** "This lets go what is held now: height of Sill, left; offset midway between Sill, left and Sill, right." */
export const letGoInWords = (job: Job, holds: readonly Hold[]): string =>
  `This lets go what is held now: ${heldInWords(job, holds)}.`;

/** "The car’s axes go by this: height of Sill, left. Without it they are not laid." */
export const laidByInWords = (job: Job, holds: readonly Hold[]): string =>
  `The car’s axes go by this: ${heldInWords(job, holds)}. Without it they are not laid.`;

const heldInWords = (job: Job, holds: readonly Hold[]): string =>
  holds
    .map(({ point, and, axis }) =>
      and === undefined
        ? `${COORDINATE_WORDS[axis]} of ${pointName(job, point)}`
        : `${COORDINATE_WORDS[axis]} midway between ${pointName(job, point)} and ${pointName(job, and)}`,
    )
    .join('; ');
