/** A hole saw. */
import * as v from 'valibot';
import { MOST_TOOLS } from '../limits.ts';
import { across } from './fields.ts';
import type { Kind } from './kind.ts';

export interface Saw {
  readonly diameter: number;
  /** How deep it cuts before its back touches, mm. Absent: FIRST_REACH. */
  readonly reach?: number;
}

/** Hole saws reach about 40 mm (common practice), where the shop has not measured its own. */
export const FIRST_REACH = 40;

export const sawKind: Kind<Saw> = {
  inWords: 'a hole saw',
  shape: v.looseObject({ diameter: across, reach: v.exactOptional(across) }),
  keys: ['diameter reach'],
  most: MOST_TOOLS,
};
