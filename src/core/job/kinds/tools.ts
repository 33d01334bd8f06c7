/**
 * What the shop cuts tube ends with. A job carries it whole, as it carries its dies, so that its recipes are the same wherever its
 * file is opened.
 */
import * as v from 'valibot';
import type { Degrees } from '../../geometry/angle.ts';
import { MOST_TOOLS } from '../limits.ts';
import { angle } from './fields.ts';
import type { Part } from './kind.ts';
import { notcherKind, type Notcher } from './notcher.ts';
import { sawKind, type Saw } from './saw.ts';

export interface Tools {
  readonly notchers: readonly Notcher[];
  /** Hole saws. */
  readonly saws: readonly Saw[];
  /** How far off square the bench saw can be set, for plain cuts. Absent: nobody has said. */
  readonly benchSaw?: Degrees;
}

/** What a job that carries none goes by. */
export const NO_TOOLS: Tools = { notchers: [], saws: [] };

/** Degrees off square that no bench saw is set beyond. */
export const GREATEST_BENCH_SAW = 89;
export const benchSawAngle = angle(0, GREATEST_BENCH_SAW);

/** No longer than the shop's own lists. */
const several = <S extends v.GenericSchema>(shape: S) =>
  v.optional(v.pipe(v.array(shape), v.maxLength(MOST_TOOLS, `more than ${MOST_TOOLS}`)), []);

export const toolsPart: Part<Tools> = {
  shape: v.looseObject({
    notchers: several(notcherKind.shape),
    saws: several(sawKind.shape),
    benchSaw: v.exactOptional(benchSawAngle),
  }),
  keys: ['benchSaw notchers saws', ...notcherKind.keys, ...sawKind.keys],
};
