/** What ends are notched with, beside hole saws in a drill. */
import * as v from 'valibot';
import type { Degrees } from '../../geometry/angle.ts';
import { angle } from '../../job/kinds/fields.ts';
import type { Kind } from '../../job/kinds/kind.ts';

export interface Notcher {
  readonly name: string;
  /** How far off square it can be set, 0 to 90. */
  readonly greatestOffSquare: Degrees;
  /** Whether it notches a tube whose axis passes the run's. */
  readonly takesOffset: boolean;
}

export const notcherKind: Kind<Notcher> = {
  inWords: 'a notcher',
  shape: v.looseObject({
    name: v.string(),
    greatestOffSquare: angle(0, 90),
    takesOffset: v.optional(v.boolean(), false),
  }),
  keys: ['name greatestOffSquare takesOffset'],
};
