/** What is left long at an end that stands on a foot, to be trimmed in the car, where floors are never where the tape said. */
import type { LengthUnit } from '../../units/length.ts';
import { upTo } from './fields.ts';

/** mm. Before anybody has said: 25 mm or 1 in, the least that shops leave on hoops and legs (common practice: 25 to 50 mm). */
export const FIRST_FOOT_TRIM: Readonly<Record<LengthUnit, number>> = { mm: 25, in: 25.4 };

/** mm. Nobody wastes a hand's breadth and more of each leg. */
export const GREATEST_FOOT_TRIM = 200;

/** Past the tip; 0 where the shop cuts to length at once. */
export const footTrim = upTo(GREATEST_FOOT_TRIM);
