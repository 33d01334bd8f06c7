/** What has to be there: bars of a role, on each side of the car, feet, gussets. What is counted is what is drawn. */
import { bareId } from '../../job/reference.ts';
import type { Bar } from '../../solve/types.ts';
import type { Questions } from '../questions.ts';
import type { CheckOf } from '../../job/kinds/rule-check.ts';
import type { Judge } from '../types.ts';

export const present: Judge<'present'> = (check, ask) => {
  const bars = ask.bars(check.roles, check.only);
  const concerns = ask.tubes(bars).map(({ id }) => id);
  return [{ value: COUNTS[check.of](bars, ask, check), concerns, at: bars[0]?.ends[0].position ?? null }];
};

type Count = (bars: readonly Bar[], ask: Questions, check: CheckOf<'present'>) => number;

const COUNTS: Readonly<Record<CheckOf<'present'>['of'], Count>> = {
  bars: (bars) => bars.length,
  'each-side': (bars) => Math.min(...[1, -1].map((side) => bars.filter((bar) => sideOf(bar) === side).length)),
  feet: (bars) => bars.flatMap(({ ends }) => ends.filter(({ fit }) => fit === 'foot' || fit === 'plate')).length,
  gussets: (bars, ask, { roles }) =>
    ask
      .gussets()
      .filter(
        ({ gusset: { between } }) =>
          roles.length === 0 || between.some(({ member }) => bars.some(({ member: { id } }) => id === bareId(member))),
      ).length,
};

/** 1 left, -1 right; 0 for one that ends on both sides of the middle of the car, or on it. */
const sideOf = ({ ends: [a, b] }: Bar): number =>
  a.position[1] * b.position[1] < 0 ? 0 : Math.sign(a.position[1] + b.position[1]);
