/** What bars stand on: the area of a foot as it covers the car, mm2, its thickness, how many holes for bolts, and the least of these across. */
import { coveredArea } from '../../feet/amount.ts';
import type { CheckOf } from '../../job/kinds/rule-check.ts';
import type { Foot } from '../../job/kinds/foot.ts';
import type { Judge, Outcome } from '../types.ts';

export const plate: Judge<'plate'> = (check, ask) =>
  ask.bars(check.roles, check.only).flatMap((bar): readonly Outcome[] => {
    const concerns = ask.tubes([bar]).map(({ id }) => id);
    const stands = bar.ends.filter(({ fit }) => fit === 'foot' || fit === 'plate');
    if (stands.length === 0) return [{ unknown: { id: 'no-foot' }, concerns, at: bar.ends[0].position }];
    return stands.map(({ foot, position: at }): Outcome =>
      foot === null
        ? { unknown: { id: 'foot-without-size' }, concerns, at }
        : { value: FIGURES[check.of](foot), concerns, at },
    );
  });

const FIGURES: Readonly<Record<CheckOf<'plate'>['of'], (foot: Foot) => number>> = {
  area: coveredArea,
  thickness: ({ thickness }) => thickness,
  bolts: ({ holes = [] }) => holes.length,
  hole: ({ holes = [] }) => (holes.length === 0 ? 0 : Math.min(...holes.map(({ diameter }) => diameter))),
};
