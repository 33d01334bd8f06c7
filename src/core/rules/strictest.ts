/**
 * Articles of several books that ask the same thing of the same bars: whoever keeps the strictest keeps them all. One article asks no less than another where
 * every frame that is within the one is within the other, by their figures alone; where neither does (45 x 2.5 here, 50 x 2 there), both stand.
 */
import type { RuleCheck, RuleSize } from '../job/kinds/rule-check.ts';
import { plainRole } from '../job/role.ts';
import type { Verdict } from './types.ts';

/** A verdict on the strictest article, and those on articles of other sheets that ask no more of the same bars. */
export interface Alike {
  readonly first: Verdict;
  readonly more: readonly Verdict[];
}

/**
 * The verdicts, in their order, each under the first that asks no less of the same bars. Articles that do not bind this car or have no figure, and questions
 * for a person, stand alone; so do two of one sheet.
 */
export function strictest(verdicts: readonly Verdict[]): readonly Alike[] {
  const alike = new Map<string, Verdict[]>();
  for (const verdict of verdicts) {
    const key = keyOf(verdict);
    alike.set(key, [...(alike.get(key) ?? []), verdict]);
  }
  const under = new Map<Verdict, Verdict>();
  for (const group of alike.values()) {
    for (const verdict of group) {
      const over = group.find((other) => isOver(other, verdict, group));
      if (over !== undefined) under.set(verdict, over);
    }
  }
  return verdicts.flatMap((first) =>
    under.has(first)
      ? []
      : [{ first, more: verdicts.filter((other) => topOf(other, under) === first && other !== first) }],
  );
}

/** Of two that ask the same, the earlier one stands over the later. */
const isOver = (one: Verdict, other: Verdict, group: readonly Verdict[]): boolean =>
  one !== other &&
  one.sheet !== other.sheet &&
  asksNoLess(one.check, other.check) &&
  (!asksNoLess(other.check, one.check) || group.indexOf(one) < group.indexOf(other));

function topOf(verdict: Verdict, under: ReadonlyMap<Verdict, Verdict>): Verdict {
  const over = under.get(verdict);
  return over === undefined ? verdict : topOf(over, under);
}

/** What has to agree for two articles to be about the same thing; of one that stands alone nothing else has its key. */
function keyOf({ sheet, index, check, because }: Verdict): string {
  const { kind, of, roles, onto = [], only, end, from, box } = check;
  const alone = kind === 'ask' || ['other-mass', 'no-mass', 'no-figure'].includes(because.id);
  return JSON.stringify([kind, of, bare(roles), only, bare(onto), end, from, box, alone && [sheet, index]]);
}

const bare = (roles: readonly string[]): readonly string[] => roles.map(plainRole).toSorted();

/** Whether whatever is within the one is within the other; both of one kind, on the same bars, and binding the car. False also where that is not known. */
export function asksNoLess(one: RuleCheck, other: RuleCheck): boolean {
  const { runs, within, diameter } = other;
  return (
    isBeyond(one, other, leastOf(one) - leastOf(other)) &&
    isBeyond(one, other, mostOf(other) - mostOf(one)) &&
    (runs === undefined || one.runs === runs) &&
    one.within === within &&
    one.diameter === diameter &&
    asksNoLessTube(one, other)
  );
}

const isPadding = ({ kind, of }: RuleCheck): boolean => kind === 'head-room' && of === 'padding';

/** Of padding the reach, by whichever figure it is given. */
const leastOf = (check: RuleCheck): number =>
  isPadding(check) ? Math.max(check.least ?? 0, check.most ?? 0) : (check.least ?? -Infinity);

/** One piece and no bend are asked for where no figure is given. */
function mostOf(check: RuleCheck): number {
  if (isPadding(check)) return Infinity;
  const { kind, of, most } = check;
  if (kind === 'one-piece') return most ?? 1;
  return most ?? (kind === 'straight' && of === 'bends' ? 0 : Infinity);
}

/** By how much the one asks more; of limits that are alike by whether the limit itself still counts. Two that ask nothing leave no number. */
const isBeyond = (one: RuleCheck, other: RuleCheck, by: number): boolean =>
  Number.isNaN(by) || by > 0 || (by === 0 && (one.strictly === true || other.strictly !== true));

/** Every tube that is within the one: the least of all its figures, beside each size that it allows. */
function asksNoLessTube(one: RuleCheck, other: RuleCheck): boolean {
  const covers = (size: Partial<RuleSize>): boolean => {
    const across = Math.max(size.outerDiameter ?? 0, one.outerDiameter ?? 0);
    const wall = Math.max(0, thinned(size.wall ?? 0, one), thinned(one.wall ?? 0, one));
    const holds = (least: Partial<RuleSize>): boolean =>
      across >= (least.outerDiameter ?? 0) && wall >= thinned(least.wall ?? 0, other);
    return holds(other) && ((other.sizes ?? []).length === 0 || other.sizes!.some(holds));
  };
  const sizes: readonly Partial<RuleSize>[] = (one.sizes ?? []).length === 0 ? [{}] : one.sizes!;
  return (
    (one.area ?? 0) >= (other.area ?? 0) && (one.secondMoment ?? 0) >= (other.secondMoment ?? 0) && sizes.every(covers)
  );
}

const thinned = (wall: number, { allowance = 0 }: RuleCheck): number => wall - allowance;
