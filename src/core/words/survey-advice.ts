/** What the Survey says beside its readings: whether they agree, which is off and what it may have been, what to measure next. */
import { pointsOf, type Measurement } from '../job/kinds/measurement.ts';
import type { Job } from '../job/types.ts';
import { pointName } from '../solve/names.ts';
import type { Adjusted, Residual, Suspect } from '../survey/adjust.ts';
import type { Misread } from '../survey/misread.ts';
import type { NextMeasurement } from '../survey/next-measurement.ts';
import { sideInName } from '../survey/point-pairs.ts';
import { formatAngle } from '../units/angle.ts';
import { formatLength, MM_PER_INCH, type LengthUnit } from '../units/length.ts';
import { COORDINATE_WORDS, measurementInWords, offInWords, readInWords } from './survey.ts';

/** Whether the readings agree: one sentence to stand over them. What nothing checks agrees with nothing. */
export function agreementInWords(job: Job, { residuals, suspects, redundancy }: Adjusted): string {
  if (job.measurements.length === 0) return 'Nothing measured yet.';
  if (redundancy === 0) {
    return 'Nothing checks these readings: each fixes something that no other does. One more measurement would show a slip.';
  }
  if (suspects.length > 0) {
    const which = suspects.length === 1 ? '1 reading does' : `${suspects.length} readings do`;
    return `${which} not agree with the others.`;
  }
  const checked = residuals.filter(({ share }) => share > HARDLY);
  const isSlope = ({ index }: Residual): boolean => job.measurements[index]!.kind === 'inclination';
  const [lengths, slopes] = [checked.filter((each) => !isSlope(each)), checked.filter(isSlope)];
  const within = [
    ...(lengths.length === 0 ? [] : [lengthWithin(mostOf(lengths), job.lengthUnit)]),
    ...(slopes.length === 0 ? [] : [`${formatAngle(Math.ceil(mostOf(slopes) * 10 - ROUNDED) / 10, 1)}°`]),
  ];
  const open = residuals.length - checked.length;
  const rest = open === 0 ? '' : `; ${open} of ${residuals.length} ${open === 1 ? 'is' : 'are'} checked by no other`;
  return `All readings agree within ${within.join(' and ')}${rest}.`;
}

/** Of a slip that would show: a reading with less is as good as unchecked. */
const HARDLY = 0.02;

const mostOf = (residuals: readonly Residual[]): number =>
  Math.max(0, ...residuals.map(({ residual }) => Math.abs(residual)));

/** Up to the next step that a tape is read to: none of them is farther off. */
function lengthWithin(most: number, unit: LengthUnit): string {
  const step = AGREE_STEP[unit] * (unit === 'in' ? MM_PER_INCH : 1);
  const steps = Math.max(1, Math.ceil(most / step - ROUNDED));
  return `${formatLength(steps * step, unit, AGREE_STEP[unit]).text} ${unit}`;
}

/** How a tape is read. */
const AGREE_STEP: Readonly<Record<LengthUnit, number>> = { in: 1 / 16, mm: 1 };

/** Of a step: what arithmetic leaves. */
const ROUNDED = 1e-6;

/** The same, and which other readings may as well be wrong. */
export function suspectInWords(job: Job, { index, fits, or }: Suspect): string {
  const says = offInWords(job, job.measurements[index]!, fits);
  if (or.length === 0) return says;
  const others = or.map((other) => {
    const reading = job.measurements[other]!;
    return `${measurementInWords(job, reading)} (${readInWords(reading, reading.value, job.lengthUnit)})`;
  });
  return `${says} It may as well be ${others.join(', or ')} that is off: nothing tells which.`;
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
      return misread.by > 0
        ? `It is ${show(misread.by)} too long, as if the tape had been held at its ${show(misread.by)} mark and that not taken off.`
        : `It is ${show(-misread.by)} too short, as if ${show(-misread.by)} had been taken off for a mark that the tape was not held at.`;
    case 'sign':
      return `It looks like the other way round: ${show(misread.reads)}.`;
    case 'plumb':
      return `It looks like degrees from plumb: ${show(misread.reads)} from level.`;
    case 'point':
      return `It fits ${pointName(job, misread.point)} in place of ${pointName(job, pointsOf(measurement).find(([key]) => key === misread.key)![1])}.`;
  }
}

/** "Measure its height", "Run a tape from it to Sill top, left". */
export const nextInWords = (job: Job, next: NextMeasurement): string =>
  next.kind === 'coordinate'
    ? `Measure its ${COORDINATE_WORDS[next.axis]}`
    : `Run a tape from it to ${pointName(job, next.to)}`;

/** "Hoop foot, right lies 23 1/2 in left of the centre line …". */
export function wrongSideInWords(name: string, by: number, unit: LengthUnit): string {
  const [is, was] = sideInName(name) === 1 ? ['right', 'left'] : ['left', 'right'];
  return `${name} lies ${formatLength(by, unit).text} ${unit} ${is} of the centre line, by its offset. An offset to the ${was} is typed ${was === 'left' ? 'without a minus' : 'with a minus'}.`;
}
