/** What was measured of a tube at the machine and by the tape, as its run keeps it. */
import type { BentBend } from '../job/kinds/bent.ts';
import type { CheckDimension } from '../run/check-dimensions.ts';
import { formatAngle } from '../units/angle.ts';
import { formatLength, type LengthUnit } from '../units/length.ts';

/** "pulled to 92.0°, read 88.5°, 310 mm of straight before it". */
export function readingInWords(
  { pulled, net, fitted, read, rotation, straight, kept }: BentBend,
  unit: LengthUnit,
): string {
  const angle = fitted ? `${degrees(net)} by the tape` : `pulled to ${degrees(pulled)}, read ${degrees(net)}`;
  return [
    angle,
    read && `read ${degrees(read.net)} by hand before`,
    rotation !== undefined && `turned ${degrees(rotation)} from the bend before it`,
    straight !== undefined && `${formatLength(straight, unit).text} ${unit} of straight before it`,
    kept && 'left so',
  ]
    .filter((part) => typeof part === 'string')
    .join(', ');
}

/** A check dimension by the name that a run keeps it under; how it lies is known of the tube alone. */
export const checkNameInWords = (check: string): string =>
  Object.hasOwn(CHECKS, check) ? CHECKS[check as CheckDimension['id']] : check;

const CHECKS: Readonly<Record<CheckDimension['id'], string>> = {
  width: 'Overall width',
  height: 'Overall height',
  chord: 'End to end',
  'legs-at-ends': 'Leg to leg at the ends',
  'legs-at-bends': 'Leg to leg at the bends',
  'diagonal-a': 'Diagonal from end A',
  'diagonal-b': 'Diagonal from end B',
  'stands-off': 'Stands off the bench by',
};

const degrees = (angle: number): string => `${formatAngle(angle, 1)}°`;
