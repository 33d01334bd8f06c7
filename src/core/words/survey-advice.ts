/** What the Survey says beside its readings: whether they agree, which is off and what it may have been, what to measure next. */
import { pointsOf, type Measurement } from '../job/kinds/measurement.ts';
import { isPrimed } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import { pointName } from '../solve/names.ts';
import type { Adjusted, Suspect } from '../survey/adjust.ts';
import type { Misread } from '../survey/misread.ts';
import type { NextMeasurement } from '../survey/next-measurement.ts';
import { formatLength, type LengthUnit } from '../units/length.ts';
import { listed } from './lists.ts';
import { COORDINATE_WORDS, measurementInWords, offInWords, readInWords } from './survey.ts';

/** Whether the readings agree: one sentence to stand over them. */
export function agreementInWords(job: Job, { residuals, suspects, redundancy }: Adjusted): string {
  if (job.measurements.length === 0) return 'Nothing measured yet.';
  if (redundancy === 0) {
    return 'Nothing checks these readings: each fixes something that no other does. One more measurement would show a slip.';
  }
  if (suspects.length > 0) {
    const which = suspects.length === 1 ? '1 reading does' : `${suspects.length} readings do`;
    return `${which} not agree with the others.`;
  }
  const lengths = residuals.filter(({ index }) => job.measurements[index]!.kind !== 'inclination');
  const most = Math.max(0, ...lengths.map(({ residual }) => Math.abs(residual)));
  return `All readings agree within ${formatLength(most, job.lengthUnit, AGREE_STEP[job.lengthUnit]).text} ${job.lengthUnit}.`;
}

/** How a tape is read. */
const AGREE_STEP: Readonly<Record<LengthUnit, number>> = { in: 1 / 16, mm: 1 };

/** The same, and which other readings may as well be wrong. */
export function suspectInWords(job: Job, { index, fits, or }: Suspect): string {
  const says = offInWords(job, job.measurements[index]!, fits);
  if (or.length === 0) return says;
  const others = or.map((other) => measurementInWords(job, job.measurements[other]!));
  return `${says} It may as well be ${listed(others)} that ${or.length === 1 ? 'is' : 'are'} off: nothing tells which.`;
}

/** "It looks like 63 typed for 36." */
export function misreadInWords(job: Job, measurement: Measurement, misread: Misread): string {
  const show = (value: number, unit: LengthUnit = job.lengthUnit): string => readInWords(measurement, value, unit);
  switch (misread.how) {
    case 'swapped':
      return `It looks like ${show(measurement.value, misread.unit)} typed for ${show(misread.reads, misread.unit)}: two digits changed over.`;
    case 'digit':
      return `It looks like ${show(measurement.value, misread.unit)} typed for ${show(misread.reads, misread.unit)}: one digit off.`;
    case 'unit':
      return misread.unit === 'in'
        ? `It looks like inches typed as millimetres: ${show(misread.reads, 'in')}.`
        : `It looks like millimetres typed as inches: ${show(misread.reads, 'mm')}.`;
    case 'mark':
      return `It is ${show(Math.abs(misread.by))} too ${misread.by > 0 ? 'long' : 'short'}: it looks like a tape held at a mark${misread.by > 0 ? ', and the mark not taken off' : ' that was taken off and was not held'}.`;
    case 'sign':
      return `It looks like the other way round: ${show(misread.reads)}.`;
    case 'plumb':
      return `It looks like degrees from plumb: ${show(misread.reads)} from level.`;
    case 'point':
      return `It fits ${pointName(job, misread.point)}${isPrimed(misread.point) ? ' on the other side' : ''} in place of ${pointName(job, pointsOf(measurement).find(([key]) => key === misread.key)![1])}.`;
  }
}

/** "Measure its height", "Run a tape from it to Sill top, left". */
export const nextInWords = (job: Job, next: NextMeasurement): string =>
  next.kind === 'coordinate'
    ? `Measure its ${COORDINATE_WORDS[next.axis]}`
    : `Run a tape from it to ${pointName(job, next.to)}`;
