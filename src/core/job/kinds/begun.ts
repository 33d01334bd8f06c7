/** A stick of a plan that is being sawn, which is still to come. */
import * as v from 'valibot';
import { MOST_ON_A_STICK } from '../limits.ts';
import type { TubeRef } from '../reference.ts';
import { count } from './fields.ts';
import { howMany } from './stick.ts';

export interface BegunStick {
  /** Its sort. */
  readonly stick: string;
  /** By which it stands in the cut list. */
  readonly number: number;
  /** In the order in which they are cut. */
  readonly cuts: readonly BegunPart[];
  /** The plan was known to be the cheapest. */
  readonly proven?: true;
}

/** A tube, or the place of a spare's record in the job. None of it is a reference: what is gone makes the plan another one. */
export interface BegunPart {
  readonly tube?: TubeRef;
  readonly spare?: number;
}

export const begunStick = v.looseObject({
  stick: v.string(),
  number: count,
  cuts: v.pipe(
    v.array(v.looseObject({ tube: v.exactOptional(v.string()), spare: v.exactOptional(howMany) })),
    v.maxLength(MOST_ON_A_STICK, `more than ${MOST_ON_A_STICK} parts`),
  ),
  proven: v.exactOptional(v.literal(true)),
});
