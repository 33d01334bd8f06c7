/** What of a frame is to be bought and made, counted: what order list and quote are made of. mm, mm2, kg. */
import { weldLength } from '../cope/weld-length.ts';
import { weldList, type Weld } from '../dossier/weld-list.ts';
import { footMass } from '../feet/amount.ts';
import { blanksOf } from '../feet/blanks.ts';
import { standsOf } from '../feet/stand.ts';
import { gussetsOf, isMade } from '../gusset/gussets.ts';
import type { Foot } from '../job/kinds/foot.ts';
import type { Gusset } from '../job/kinds/gusset.ts';
import { remembered } from '../remembered.ts';
import type { Frame } from '../solve/types.ts';

export interface FeetToMake {
  readonly foot: Foot;
  readonly count: number;
  /** Of one of them, of its flat steel: mm2 of sheet for all its pieces, holes not taken off; kg of these as cut. */
  readonly area: number;
  readonly mass: number;
}

export interface GussetsToMake {
  readonly gusset: Gusset;
  readonly count: number;
  /** Of one of them, of the flat sheet. */
  readonly area: number;
  readonly mass: number;
}

export interface WeldsToMake {
  readonly joints: number;
  readonly length: number;
  /** Of these, joints at which some of the wall meets nothing. */
  readonly partly: number;
}

export interface Amounts {
  readonly tubes: number;
  /** Those that were cut among them. */
  readonly spares: number;
  readonly bends: number;
  /** Tubes that an end is coped to, each a cut; ends that are cut to a mitre, and to a foot or plate. */
  readonly copes: number;
  readonly mitres: number;
  readonly footCuts: number;
  /** Tube to tube, and tube to foot or plate. */
  readonly welds: { readonly tubes: WeldsToMake; readonly feet: WeldsToMake };
  readonly feet: readonly FeetToMake[];
  readonly gussets: readonly GussetsToMake[];
  /** Gussets of the job that cannot be made as they are. */
  readonly unmade: number;
  /** By the diameter of its hole, the smallest first. */
  readonly bolts: readonly { readonly hole: number; readonly count: number }[];
}

/** Kept as long as the frame. */
export const amountsOf: (frame: Frame) => Amounts = remembered((frame): Amounts => {
  const { job, tubes } = frame;
  const ends = tubes.flatMap((tube) => tube.ends);
  const welds = weldList(frame).filter(({ kind }) => kind !== 'none');
  const isOnCar = ({ kind }: Weld): boolean => kind === 'foot' || kind === 'plate';
  const feet = feetOf(frame);
  const sets = gussetsOf(frame);
  return {
    tubes: tubes.length,
    spares:
      job.spares.reduce((sum, { count }) => sum + count, 0) +
      job.sawn.flatMap(({ cuts }) => cuts).filter(({ tube }) => tube === undefined).length,
    bends: tubes.reduce((sum, { bends }) => sum + bends.length, 0),
    copes: ends.reduce((sum, { cuts }) => sum + cuts.filter(({ reaches }) => reaches).length, 0),
    mitres: ends.filter(({ fit }) => fit === 'mitre').length,
    footCuts: ends.filter(({ fit }) => fit === 'foot' || fit === 'plate').length,
    welds: {
      tubes: weldsOf(welds.filter((weld) => !isOnCar(weld))),
      feet: weldsOf(welds.filter(isOnCar)),
    },
    feet,
    gussets: job.gussets.flatMap((gusset): readonly GussetsToMake[] => {
      const made = sets.flatMap((set) => (set.gusset === gusset && isMade(set.made) ? [set.made.sheet] : []));
      return made.length === 0 ? [] : [{ gusset, count: made.length, area: made[0]!.area, mass: made[0]!.mass }];
    }),
    unmade: sets.filter(({ made }) => !isMade(made)).length,
    bolts: boltsOf(feet),
  };
});

function weldsOf(welds: readonly Weld[]): WeldsToMake {
  const lengths = welds.map(({ end }) => weldLength(end));
  return {
    joints: welds.length,
    length: lengths.reduce((sum, { length }) => sum + length, 0),
    partly: lengths.filter(({ open }) => open > 0).length,
  };
}

const feetOf = ({ job, tubes }: Frame): readonly FeetToMake[] => {
  const stands = tubes.flatMap(standsOf);
  return job.feet.flatMap((foot): readonly FeetToMake[] => {
    const count = stands.filter((stand) => stand.foot.id === foot.id).length;
    if (count === 0) return [];
    const area = sheetOf(foot).reduce((sum, each) => sum + each.area, 0);
    return [{ foot, count, area, mass: footMass(foot) }];
  });
};

function boltsOf(feet: readonly FeetToMake[]): Amounts['bolts'] {
  const byHole = new Map<number, number>();
  for (const { foot, count } of feet) {
    for (const { diameter } of foot.holes ?? []) byHole.set(diameter, (byHole.get(diameter) ?? 0) + count);
  }
  return [...byHole].map(([hole, count]) => ({ hole, count })).toSorted((one, other) => one.hole - other.hole);
}

/** What of the plates and walls of these feet is cut from sheet of each thickness: mm2, the thinnest first. */
export function footSheet(
  feet: readonly FeetToMake[],
): readonly { readonly thickness: number; readonly area: number }[] {
  const byThickness = new Map<number, number>();
  for (const { foot, count } of feet) {
    for (const { thickness, area } of sheetOf(foot)) {
      byThickness.set(thickness, (byThickness.get(thickness) ?? 0) + area * count);
    }
  }
  return [...byThickness]
    .map(([thickness, area]) => ({ thickness, area }))
    .toSorted((one, other) => one.thickness - other.thickness);
}

/** The flat rectangles that one foot is cut from, a row for each piece with its likes: mm2. */
const sheetOf = (foot: Foot): readonly { readonly thickness: number; readonly area: number }[] =>
  blanksOf(foot).map(({ thickness, along, across, count }) => ({
    thickness,
    area: (along[1] - along[0]) * (across[1] - across[0]) * count,
  }));
