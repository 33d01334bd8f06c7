/** The tube itself: one of the sizes that a book lists, or the least area, second moment, diameter and wall. Annulus: A = pi/4 (D^2 - d^2), I = pi/64 (D^4 - d^4). */
import type { RuleSize } from '../../job/kinds/rule-check.ts';
import type { Section } from '../../job/kinds/section.ts';
import { sectionArea } from '../../solve/amount.ts';
import type { Judge, Measured } from '../types.ts';

/** mm4 about any diameter. */
export const secondMomentOf = ({ outerDiameter: D, wall }: RuleSize): number =>
  (Math.PI / 64) * (D ** 4 - (D - 2 * wall) ** 4);

/** Of each bar what is nearest to its least; of several sizes the one that it comes nearest to meeting counts. */
export const section: Judge<'section'> = (check, ask) =>
  ask.bars(check.roles, check.only).map((bar) => {
    const allowed = <L extends Least>(least: L): L =>
      least.wall === undefined ? least : { ...least, wall: least.wall - (check.allowance ?? 0) };
    const bySize = (check.sizes ?? [])
      .flatMap((size) => shortest(bar.section, allowed(size)))
      .toSorted(byShare)
      .at(-1);
    const all = [...(bySize === undefined ? [] : [bySize]), ...shortest(bar.section, allowed(check))];
    const concerns = ask.tubes([bar]).map(({ id }) => id);
    return { ...all.toSorted(byShare)[0]!, concerns, at: bar.ends[0].position };
  });

type Own = Required<Pick<Measured, 'value' | 'quantity' | 'least'>>;
type Least = Partial<RuleSize> & { readonly area?: number; readonly secondMoment?: number };

/** Of all that is asked of it what it has least of; empty where nothing is asked. */
function shortest(tube: Section, { outerDiameter, wall, area, secondMoment }: Least): readonly Own[] {
  const asked: readonly (readonly [number, number | undefined, Own['quantity']])[] = [
    [tube.outerDiameter, outerDiameter, 'length'],
    [tube.wall, wall, 'length'],
    [sectionArea(tube), area, 'area'],
    [secondMomentOf(tube), secondMoment, 'secondMoment'],
  ];
  return asked
    .flatMap(([value, least, quantity]): readonly Own[] => (least === undefined ? [] : [{ value, least, quantity }]))
    .toSorted(byShare)
    .slice(0, 1);
}

/** As a share of what is asked. */
const byShare = (one: Own, other: Own): number => one.value / one.least - other.value / other.least;
