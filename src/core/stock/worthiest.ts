/** The parts of one stick that are worth most. */
import { ROUNDING } from '../geometry/tolerance.ts';
import { goesOn, type Effort, type Lay, type Problem } from './lays.ts';

export interface Worthiest {
  /** No lay of the sort is worth more; `floor` where none is worth more than that. */
  readonly most: number;
  /** Lays that are worth more than the floor, the worthiest last. */
  readonly lays: readonly Lay[];
}

/** By what a part of each lot is worth, money; branch and bound, the parts first that are worth most by the mm. Null where the effort is spent before it is known. */
export function worthiest(
  problem: Problem,
  worth: readonly number[],
  sort: number,
  floor: number,
  effort: Effort,
): Worthiest | null {
  const { lots, room } = problem;
  const byDensity = lots
    .flatMap((_, lot) => (worth[lot]! > 0 && goesOn(problem, lot, sort) ? [lot] : []))
    .toSorted((one, other) => worth[other]! / lots[other]!.length - worth[one]! / lots[one]!.length);
  const found: Lay[] = [];
  const of = lots.map(() => 0);
  let most = floor;
  const add = (from: number, slack: number, worthIt: number): void => {
    if (worthIt > most) {
      most = worthIt;
      found.push({ sort, of: [...of] });
    }
    for (let at = from; at < byDensity.length; at++) {
      if (effort.left-- <= 0) return;
      const lot = byDensity[at]!;
      const { length, count } = lots[lot]!;
      if (worthIt + (slack * worth[lot]!) / length <= most) return;
      if (length > slack) continue;
      const times = Math.min(count, Math.floor(slack / length));
      for (let some = times; some > 0; some--) {
        of[lot] = some;
        add(at + 1, slack - some * length, worthIt + some * worth[lot]!);
      }
      of[lot] = 0;
    }
  };
  add(0, room[sort]! + ROUNDING, 0);
  return effort.left <= 0 ? null : { most, lays: found };
}
