/** How large people are, for a start where nobody has been measured. */
import { formatLength, type LengthUnit } from '../units/length.ts';

/** ANSUR II, public data of 4 082 men and 1 986 women, unclothed and upright; percentiles computed, mm: 5, 50 and 95 of 100 are no larger. */
const SITTING = { men: [860, 918, 977], women: [803, 857, 912] } as const;
const OVER_SHOULDERS = [459, 509, 567] as const;

/** What a person is shown is no finer than people are alike. */
const STEP: Readonly<Record<LengthUnit, number>> = { in: 1 / 4, mm: 1 };

/** A note that is no measurement. */
export function peopleInWords(unit: LengthUnit): string {
  const three = (all: readonly number[]): string =>
    `${all.map((mm) => formatLength(mm, unit, STEP[unit]).text).join(', ')} ${unit}`;
  return (
    `Nothing takes the place of measuring. For a start, of 100 people 5, 50 and 95 are no larger than this, without clothes or helmet (ANSUR II): ` +
    `sitting height ${three(SITTING.men)} for men, ${three(SITTING.women)} for women; over both shoulders ${three(OVER_SHOULDERS)} for men.`
  );
}
