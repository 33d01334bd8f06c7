/**
 * What each bend of a tube is made from at the machine: how far to pull and where to clamp.
 *
 * Marks are absolute, along the developed length from end A's node, never chained; the bend lies on the far side of its
 * marks, towards end B. Clamp mark = start of bend - the die's clamp offset.
 */
import type { Radians } from '../geometry/angle.ts';
import type { SolvedTube } from '../solve/types.ts';
import { elasticRecovery } from './springback.ts';
import { steelOf } from './steels.ts';

export interface BendMarks {
  /** Net angle plus the recovery; null when the section's material is not a known steel. */
  readonly machineAngle: Radians | null;
  /** Where machineAngle comes from: elastic recovery alone, which reads low. */
  readonly machineAngleFrom: 'estimate' | null;
  /** mm from end A's node; negative when the clamp would sit beyond the end. */
  readonly clampMark: number;
}

export function bendMarks({ bends, die, section }: SolvedTube): readonly BendMarks[] {
  const steel = steelOf(section.material);
  return bends.map((bend) => ({
    machineAngle: steel === undefined ? null : bend.angle * (1 + elasticRecovery(section, bend.radius, steel)),
    machineAngleFrom: steel === undefined ? null : 'estimate',
    clampMark: bend.start - die!.clampOffset,
  }));
}
