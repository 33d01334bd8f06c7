/** What the car is measured with: a tape, a rule, a level; what it reads, and how surely. */
import * as v from 'valibot';
import { fault } from '../../job/fault.ts';
import type { Kind } from '../../job/kinds/kind.ts';
import { sigma, type MeasurementKind } from '../../job/kinds/measurement.ts';
import { MOST_TOOLS } from '../../job/limits.ts';

export interface Instrument {
  readonly name: string;
  /** Slopes, which are degrees, or else any of the others. */
  readonly reads: readonly MeasurementKind[];
  /** One standard deviation of what it reads, mm; degrees of slopes. */
  readonly sigma: number;
}

const READS = v.picklist(['distance', 'coordinate', 'width', 'difference', 'inclination']);

export const instrumentKind: Kind<Instrument> = {
  inWords: 'an instrument',
  shape: v.looseObject({
    name: v.string(),
    reads: v.pipe(v.array(READS), v.minLength(1, 'reads nothing')),
    sigma,
  }),
  keys: ['name reads sigma'],
  most: MOST_TOOLS,
  beyondShape: ({ reads }, at) =>
    reads.includes('inclination') && reads.some((kind) => kind !== 'inclination')
      ? [fault(`${at}.reads`, 'slopes are degrees: what reads them is an instrument of its own')]
      : [],
};
