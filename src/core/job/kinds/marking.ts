import * as v from 'valibot';
import type { Part } from './kind.ts';

/** How marks are taken on the straight tube, before it is bent. */
export interface Marking {
  /** The end of the blank that the tape is hooked over; from the middle outwards only on hoops that read the same from both ends. */
  readonly from: 'A' | 'B' | 'middle';
  /** What is marked of each bend: its start, where the clamp sits, its middle, or both tangents. */
  readonly mark: 'start' | 'clamp' | 'middle' | 'tangents';
  /** Marks are read on the finer of the unit's two tapes. */
  readonly fine: boolean;
}

/** Marks as they are taken before anybody has chosen. */
export const FIRST_MARKING: Marking = { from: 'A', mark: 'start', fine: false };

/** As a new job has it where the shop says nothing: a hoop that reads the same from both ends from its middle, any other tube from end A. */
export const NEW_MARKING: Marking = { ...FIRST_MARKING, from: 'middle' };

export const hookedEnd = v.picklist(['A', 'B', 'middle']);

export const markingPart: Part<Marking> = {
  shape: v.looseObject({
    from: v.optional(hookedEnd, FIRST_MARKING.from),
    mark: v.optional(v.picklist(['start', 'clamp', 'middle', 'tangents']), FIRST_MARKING.mark),
    fine: v.optional(v.boolean(), FIRST_MARKING.fine),
  }),
  keys: ['from mark fine'],
};
