/**
 * What each bend of a tube is made from at the machine: how far to pull and where to clamp.
 *
 * Marks are absolute, along the developed length from end A's node, never chained; the bend lies on the far side of its
 * marks, towards end B. Clamp mark = start of bend - the die's clamp offset.
 */
import type { Radians } from '../geometry/angle.ts';
import { pullAdvices, type PullAdvice } from '../springback/pull-advice.ts';
import { pulledFor, pulledHalfWidth, type PullLaw } from '../springback/pull-law.ts';
import type { SolvedTube } from '../solve/types.ts';

export interface BendMarks {
  /** What a person pulls to. */
  readonly pull: PullAdvice;
  /** What the law of the pulls asks for the net angle, wherever it leads; null where there are no pulls and the section's material is not a known steel. */
  readonly machineAngle: Radians | null;
  /** What machineAngle rests on; an 'estimate' is elastic recovery alone and reads low. */
  readonly machineAngleFrom: PullLaw['from'] | null;
  /** Half-width of the 95 % interval of machineAngle by the logged pulls alone; null with fewer than three. */
  readonly machineAngleWithin: Radians | null;
  /** mm from end A's node; negative when the clamp would sit beyond the end. */
  readonly clampMark: number;
}

export function bendMarks(tube: SolvedTube): readonly BendMarks[] {
  const { bends, die, pullLaw } = tube;
  const pulls = pullAdvices(tube);
  return bends.map((bend, i) => ({
    pull: pulls[i]!,
    machineAngle: pullLaw === null ? null : pulledFor(pullLaw, bend.angle),
    machineAngleFrom: pullLaw?.from ?? null,
    machineAngleWithin: pullLaw === null ? null : pulledHalfWidth(pullLaw, bend.angle),
    clampMark: bend.start - die!.clampOffset,
  }));
}
