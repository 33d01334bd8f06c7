/** A hole saw. */
import * as v from 'valibot';
import { across } from '../../job/kinds/fields.ts';
import type { Kind } from '../../job/kinds/kind.ts';

export interface Saw {
  readonly diameter: number;
}

export const sawKind: Kind<Saw> = {
  inWords: 'a hole saw',
  shape: v.looseObject({ diameter: across }),
  keys: ['diameter'],
};
