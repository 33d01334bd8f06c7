/** How far tubes stand from the nearest tube of another role, mm: between their surfaces as coped, or between centrelines. */
import { outsideOf } from '../../gaps/outside.ts';
import { gapBetween } from '../../gaps/tube-gap.ts';
import { nearestToPath } from '../../geometry/nearest-paths.ts';
import { nearestOnPath } from '../../geometry/path.ts';
import type { SolvedTube } from '../../solve/types.ts';
import type { Judge, Measured, Outcome } from '../types.ts';

export const gapWindow: Judge<'gap-window'> = (check, ask) => {
  const onto = check.onto ?? [];
  const others = ask.tubes(ask.bars(onto));
  return ask.tubes(ask.bars(check.roles, check.only)).map((tube): Outcome => {
    const beside = others.filter(({ bar }) => bar !== tube.bar);
    if (beside.length === 0)
      return { unknown: { id: 'nothing-there', roles: onto }, concerns: [tube.id], at: tube.ends[0].position };
    return beside
      .map((other) => (check.of === 'axes' ? axesApart(tube, other) : surfacesApart(tube, other)))
      .reduce((one, other) => (other.value < one.value ? other : one));
  });
};

function surfacesApart(tube: SolvedTube, other: SolvedTube): Measured {
  const { distance, onA, onB } = gapBetween(outsideOf(tube), outsideOf(other), Infinity)!;
  return { value: distance, concerns: [tube.id, other.id], at: onA, to: onB };
}

function axesApart(tube: SolvedTube, other: SolvedTube): Measured {
  const { point, distance } = nearestToPath(tube.path, other.path);
  return { value: distance, concerns: [tube.id, other.id], at: point, to: nearestOnPath(other.path, point).point };
}
