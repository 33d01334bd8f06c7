/** How each end is notched, as data. */
import { notchingOf, type Notching, type Way, type WhyWrap } from '../../core/cope/notching.ts';
import { toDegrees, type Degrees } from '../../core/geometry/angle.ts';
import type { Tools } from '../../core/job/kinds/tools.ts';
import type { TubeEnd } from '../../core/solve/types.ts';

/** As in the job's tools; angles in degrees. See core/cope/notching.ts. */
export interface FabricationNotching {
  /** The machine's name. */
  readonly notcher: string | null;
  readonly leans: Notching['leans'];
  readonly gap: number;
  /** One for each of the end's cuts, in their order. */
  readonly notches: readonly {
    readonly way: Way;
    readonly why: WhyWrap | null;
    readonly saw: number | null;
    readonly set: Degrees | null;
    readonly centre: number | null;
    readonly depth: number | null;
  }[];
}

/** Null at an end that is not coped. */
export function fabricationNotching(end: TubeEnd, tools: Tools | undefined): FabricationNotching | null {
  const notching = notchingOf(end, tools);
  return (
    notching && {
      notcher: notching.notcher?.name ?? null,
      leans: notching.leans,
      gap: notching.gap,
      notches: notching.notches.map(({ way, why, sawn }) => ({
        way,
        why,
        saw: sawn?.saw ?? null,
        set: sawn === null ? null : toDegrees(sawn.set),
        centre: sawn?.centre ?? null,
        depth: sawn?.depth ?? null,
      })),
    }
  );
}
