/** The hole saws that a frame is notched with, and which of them the shop has not. */
import { ROUNDING } from '../geometry/tolerance.ts';
import { NO_TOOLS } from '../job/kinds/tools.ts';
import type { Frame } from '../solve/types.ts';

export interface SawToGet {
  /** mm across, as the tube that is cut into. */
  readonly diameter: number;
  /** Cuts that want one. */
  readonly cuts: number;
  readonly isThere: boolean;
}

/** A hole saw as wide as each tube that others are coped to, the narrowest first. */
export function sawsFor({ job, tubes }: Frame): readonly SawToGet[] {
  const { saws } = job.tools ?? NO_TOOLS;
  const cuts = tubes.flatMap(({ ends }) => ends.flatMap((end) => end.cuts.filter(({ reaches }) => reaches)));
  const widths: number[] = [];
  for (const { sawDiameter } of cuts)
    if (!widths.some((width) => Math.abs(width - sawDiameter) <= ROUNDING)) widths.push(sawDiameter);
  return widths
    .toSorted((one, other) => one - other)
    .map((diameter) => ({
      diameter,
      cuts: cuts.filter(({ sawDiameter }) => Math.abs(sawDiameter - diameter) <= ROUNDING).length,
      isThere: saws.some((saw) => Math.abs(saw.diameter - diameter) <= ROUNDING),
    }));
}
