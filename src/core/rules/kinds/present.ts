/** What has to be there: bars of a role, on each side of the car, feet, gussets. What is counted is what is drawn. */
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
      .filter(({ between }) =>
        roles.length === 0 ? true : between.some(({ member }) => bars.some(({ id }) => id === member)),
      )
      .reduce((sum, { mirror }) => sum + (mirror ? 2 : 1), 0),
};

/** By the middle between its ends; 0 for one that lies across the middle of the car. */
const sideOf = ({ ends: [a, b] }: Bar): number => Math.sign(a.position[1] + b.position[1]);
