/** The whole job as it was at some time, kept by a name: to be held against what it has become, or gone back to. */
import * as v from 'valibot';
import { LONGEST_VARIANT, MOST_VARIANTS } from '../limits.ts';
import { named } from './fields.ts';
import type { Kind } from './kind.ts';

export interface Variant {
  readonly id: string;
  readonly name: string;
  /** When it was kept, as 2026-03-02. */
  readonly on: string;
  /** A job file, without the variants that it had. It comes through the door for files when it is opened, like any other. */
  readonly text: string;
}

export const variantKind: Kind<Variant> = {
  word: 'variant',
  letter: 'variant',
  shape: v.looseObject({
    ...named,
    on: v.optional(v.string(), ''),
    text: v.pipe(v.string(), v.maxLength(LONGEST_VARIANT, `longer than ${LONGEST_VARIANT} characters`)),
  }),
  keys: ['id name on text'],
  most: MOST_VARIANTS,
};
