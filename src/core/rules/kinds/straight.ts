/** Whether bars are straight, and how long they run free: from one joint to the next along the centreline, mm. */
import { toDegrees } from '../../geometry/angle.ts';
import { placeAt } from '../../geometry/path.ts';
import type { Bar } from '../../solve/types.ts';
import type { Questions } from '../questions.ts';
import { landingsOn } from './landings.ts';
import type { Judge, Outcome } from '../types.ts';

export const straight: Judge<'straight'> = (check, ask) =>
  ask.bars(check.roles, check.only).map((bar) => {
    const concerns = ask.tubes([bar]).map(({ id }) => id);
    if (check.of === 'free-length') return { ...longestFree(bar, ask), concerns };
    const turn = toDegrees(bar.bends.reduce((sum, { angle }) => sum + angle, 0));
    return { value: turn, most: check.most ?? 0, concerns, at: bar.bends[0]?.corner ?? bar.ends[0].position };
  });

/** Joints are where other tubes are coped to it, and where it is cut for one that runs through; its own ends count, be they welded or not. */
function longestFree(bar: Bar, ask: Questions): Pick<Extract<Outcome, { value: number }>, 'value' | 'at' | 'to'> {
  const joints = landingsOn(bar, ask).map(({ at }) => at);
  const pieces = ask.tubes([bar]).map(({ piece }) => piece?.from ?? 0);
  const places = [
    0,
    ...pieces,
    ...joints.map((at) => Math.min(Math.max(at, 0), bar.developedLength)),
    bar.developedLength,
  ].toSorted((a, b) => a - b);
  let from = 0;
  places.forEach((at, i) => {
    if (i > 0 && at - places[i - 1]! > places[from + 1]! - places[from]!) from = i - 1;
  });
  const [start, stop] = [places[from]!, places[from + 1]!];
  return { value: stop - start, at: placeAt(bar.path, start).point, to: placeAt(bar.path, stop).point };
}
