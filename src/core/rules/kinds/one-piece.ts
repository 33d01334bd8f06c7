/** Whether a bar is made in one piece. */
import type { Judge } from '../types.ts';

export const onePiece: Judge<'one-piece'> = (check, ask) =>
  ask.bars(check.roles, check.only).map((bar) => {
    const tubes = ask.tubes([bar]);
    const at = tubes[0]!.ends[1].position;
    return { value: tubes.length, most: check.most ?? 1, concerns: tubes.map(({ id }) => id), at };
  });
