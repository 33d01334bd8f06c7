/** How much room steel is to leave to a measured point or a body line. */
import * as v from 'valibot';
import { upTo } from './fields.ts';

/** mm. Farther from the trim no cage stands. */
export const GREATEST_LEAST_GAP = 500;

/** Left out where nobody asks for any. */
export const leastGap = v.exactOptional(upTo(GREATEST_LEAST_GAP));
