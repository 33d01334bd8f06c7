/** What ends are notched with: a hole saw on a head that is set off square. */
import * as v from 'valibot';
import type { Degrees } from '../../geometry/angle.ts';
import { MOST_TOOLS } from '../limits.ts';
import { angle } from './fields.ts';
import type { Kind } from './kind.ts';

export interface Notcher {
  readonly name: string;
  /** How far off square it can be set, 0 to 90. */
  readonly greatestOffSquare: Degrees;
  /** Whether it notches a tube whose axis passes the run's. */
  readonly takesOffset: boolean;
  /** What its scale is read to. Absent: to any angle. */
  readonly step?: Degrees;
  /** Where the drill leans when the head is set off square: back over the tube, out past the tube's end, or either. Absent: nobody has said. */
  readonly leans?: 'over-tube' | 'past-end' | 'either';
}

/** Degrees: what a notcher's scale can be read to. */
export const LEAST_STEP = 0.01;
export const GREATEST_STEP = 45;

export const notcherKind: Kind<Notcher> = {
  inWords: 'a notcher',
  shape: v.looseObject({
    name: v.string(),
    greatestOffSquare: angle(0, 90),
    takesOffset: v.optional(v.boolean(), false),
    step: v.exactOptional(angle(LEAST_STEP, GREATEST_STEP)),
    leans: v.exactOptional(v.picklist(['over-tube', 'past-end', 'either'])),
  }),
  keys: ['name greatestOffSquare takesOffset step leans'],
  most: MOST_TOOLS,
};
