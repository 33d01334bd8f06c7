/** Changes that follow one another, joined to one that does the same. */
import { applied, changeOf, swapsTurnedRound, turnedRound, type Change, type Swap } from './change.ts';
import { sameData } from './equal.ts';

/** All that `first` and then `second` change, by their names. */
export function joinedAll(first: readonly Change[], second: readonly Change[]): readonly Change[] {
  const result = new Map(first.map((item) => [item.key, item]));
  for (const next of second) {
    const earlier = result.get(next.key);
    const both = earlier ? joined(earlier, next) : next;
    if (both === null) result.delete(next.key);
    else result.set(next.key, both);
  }
  return [...result.values()];
}

/** null where the second takes the first back. */
function joined(first: Change, second: Change): Change | null {
  const { key } = first;
  if (isWhole(first)) return changeOf(key, first.before, applied(first.after, second));
  if (isWhole(second)) return changeOf(key, applied(second.before, turnedRound(first)), second.after);
  if (first.fields !== undefined) {
    const fields = joinedAll(first.fields, second.fields ?? []);
    return fields.length === 0 ? null : { key, fields };
  }
  const items = joinedSwaps(first.items ?? [], second.items ?? []);
  return items.length === 0 ? null : { key, items, length: first.length! };
}

/**
 * One after the other; a swap that takes an earlier one back, or changes the same item again, is made one with it where nothing
 * between has shifted the list.
 */
export const joinedSwaps = (first: readonly Swap[], second: readonly Swap[]): readonly Swap[] =>
  second.reduce(withSwap, first);

function withSwap(swaps: readonly Swap[], next: Swap): readonly Swap[] {
  for (let nth = swaps.length - 1; nth >= 0; nth -= 1) {
    const earlier = swaps[nth]!;
    if (sameData(swapsTurnedRound([earlier]), [next])) return swaps.toSpliced(nth, 1);
    if (!isInPlace(earlier) || !isInPlace(next)) break;
    if (earlier.at === next.at) return swaps.toSpliced(nth, 1, ...joinedInPlace(earlier, next));
  }
  return [...swaps, next];
}

function joinedInPlace(earlier: Swap, next: Swap): readonly Swap[] {
  const both = joined(asChange(earlier), asChange(next));
  if (both === null) return [];
  const { at } = next;
  return [both.fields === undefined ? { at, before: [both.before], after: [both.after] } : { at, fields: both.fields }];
}

/** An item for an item: it shifts nothing. A list in a list is no such item, as there is none in a job. */
const isInPlace = (swap: Swap): boolean =>
  'fields' in swap ||
  (swap.before.length === 1 && swap.after.length === 1 && ![swap.before[0], swap.after[0]].some(Array.isArray));

const asChange = (swap: Swap): Change =>
  'fields' in swap ? { key: '', fields: swap.fields } : { key: '', before: swap.before[0], after: swap.after[0] };

const isWhole = ({ fields, items }: Change): boolean => fields === undefined && items === undefined;
