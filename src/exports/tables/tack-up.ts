/** The fabrication file's block on setting the cage up by tape: places, tapes and bays as they are worked out, angles in degrees. */
import { toDegrees, type Degrees } from '../../core/geometry/angle.ts';
import type { Vec3 } from '../../core/geometry/vector.ts';
import type { TubeRef } from '../../core/job/reference.ts';
import type { Frame } from '../../core/solve/types.ts';
import type { Bay, BayCorner } from '../../core/tack/bays.ts';
import type { Lean } from '../../core/tack/lean.ts';
import type { EdgePlace, TackPlace } from '../../core/tack/places.ts';
import type { Tape } from '../../core/tack/tapes.ts';
import { tackUp } from '../../core/tack/tack-up.ts';

export interface FabricationTackUp {
  /** The tube that is set first; null without tubes. */
  readonly first: {
    readonly tube: TubeRef;
    readonly lean: Degrees;
    readonly towards: Lean['towards'];
    readonly plane: boolean;
    readonly feet: (Tape & { readonly from: TackPlace }) | null;
  } | null;
  /** In build order, end A first; ends that no three tapes fix are left out. */
  readonly ends: readonly {
    readonly tube: TubeRef;
    readonly end: 'A' | 'B';
    readonly from: EdgePlace;
    readonly tapes: readonly Tape[];
    readonly spread: number;
  }[];
  readonly bays: readonly {
    readonly sides: readonly TubeRef[];
    readonly corners: readonly BayCorner[];
    readonly outwards: Vec3;
    readonly tapes: Bay['tapes'];
    readonly centres: Bay['centres'];
    readonly symmetric: boolean;
  }[];
}

export function fabricationTackUp(frame: Pick<Frame, 'tubes'>): FabricationTackUp {
  const { first, tubes, bays } = tackUp(frame);
  return {
    first: first && {
      tube: first.tube,
      lean: toDegrees(first.lean.angle),
      towards: first.lean.towards,
      plane: first.lean.plane,
      feet: first.feet,
    },
    ends: tubes.flatMap(({ tube, ends }) =>
      ends.flatMap((end) => {
        if (end === null) return [];
        return [{ tube, end: end.end, from: end.from, tapes: end.tapes, spread: end.spread }];
      }),
    ),
    bays: bays.map(({ sides, corners, outwards, tapes, centres, symmetric }) => ({
      sides,
      corners,
      outwards,
      tapes,
      centres,
      symmetric,
    })),
  };
}
