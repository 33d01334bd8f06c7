/** Bends as they are, or as they came out where the tube was bent and stands so: radius on the centreline over the tube's diameter, how round, how many, how far. */
import { toDegrees } from '../../geometry/angle.ts';
import type { Bar, Bend, SolvedTube } from '../../solve/types.ts';
import type { Questions } from '../questions.ts';
import type { Judge, Outcome } from '../types.ts';

/** Of each bend: R / D, R in mm, or the least over the greatest diameter that was measured across it. */
export const bendRadius: Judge<'bend-radius'> = (check, ask) => {
  const { of } = check;
  const measured = of === 'roundness' ? ask.bent() : [];
  const bars = ask.bars(check.roles, check.only);
  return eachBend(ask.tubes(bars), ask, (tube, { radius }, bend) => {
    if (of === 'diameters') return radius / tube.section.outerDiameter;
    if (of === 'radius') return radius;
    const across = measured.find((each) => each.tube === tube.id)?.bends.find((each) => each.bend === bend)?.across;
    return across === undefined ? null : across[0] / across[1];
  });
};

/** Of each bar: how many bends, how many degrees they turn together; or of each bend how far it turns. */
export const bendCount: Judge<'bend-count'> = (check, ask) =>
  check.of === 'each'
    ? eachBend(ask.bars(check.roles, check.only), ask, (_bar, { angle }) => toDegrees(angle))
    : ask.bars(check.roles, check.only).map((bar) => ({
        value:
          check.of === 'count' ? bar.bends.length : toDegrees(bar.bends.reduce((sum, { angle }) => sum + angle, 0)),
        concerns: ask.tubes([bar]).map(({ id }) => id),
        at: bar.bends[0]?.corner ?? bar.ends[0].position,
      }));

/** Of tubes as they are made; or of whole bars, where a bend in which one is cut turns as far as both its pieces do. */
function eachBend<T extends Bar>(
  of: readonly T[],
  ask: Questions,
  figure: (tube: T, bend: Bend, number: number) => number | null,
): readonly Outcome[] {
  const found = of.flatMap((tube) =>
    tube.bends.map((bend, i): Outcome => {
      const value = figure(tube, bend, i + 1);
      const where = { concerns: concernsOf(tube, ask), at: bend.corner };
      return value === null
        ? { unknown: { id: 'roundness-not-measured' }, ...where }
        : { value, bend: i + 1, ...where };
    }),
  );
  // Of straight bars alone there is nothing to measure, and nothing is met by that.
  return found.length > 0 || of.length === 0 ? found : [{ unknown: { id: 'no-bends' }, concerns: [], at: null }];
}

const concernsOf = (tube: Bar | SolvedTube, ask: Questions) =>
  'bar' in tube ? [tube.id] : ask.tubes([tube]).map(({ id }) => id);
