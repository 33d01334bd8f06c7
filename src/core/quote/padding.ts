/** Padding to buy: of the articles that name tubes near a helmet the one that asks for most. */
import { judge } from '../rules/judge.ts';
import type { Judged } from '../rules/questions.ts';
import type { ToPad } from '../rules/types.ts';

export interface Padding {
  /** mm, along the tubes. */
  readonly length: number;
  readonly stretches: readonly ToPad[];
}

/** Null where no article of the job's sheets names any. */
export function paddingOf(frame: Judged): Padding | null {
  const asked = judge(frame).flatMap(({ because }): readonly Padding[] =>
    because.id === 'to-pad'
      ? [
          {
            stretches: because.stretches,
            length: because.stretches.reduce((sum, { from, to }) => sum + to - from, 0),
          },
        ]
      : [],
  );
  return asked.toSorted((one, other) => other.length - one.length)[0] ?? null;
}
