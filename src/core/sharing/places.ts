/**
 * Places in a list that several devices add to: each record's is a number, and the list goes by these. One that comes between two gets a place
 * between theirs, so that nobody has to know of the others' places to add one.
 */
import { swapsBetween } from '../job/change.ts';

/** A list as it stands: what its records go by, and the place of each, none less than that before it. */
export interface Order {
  readonly keys: readonly string[];
  readonly places: readonly number[];
}

/** Of a list with nothing in it. */
export const NO_ORDER: Order = { keys: [], places: [] };

/**
 * The places of the same list with other keys in it: those that stay where they were keep theirs. All are given anew, from 1, where two lie so near each
 * other that no number is left between.
 */
export function placed(before: Order, keys: readonly string[]): Order {
  let kept: readonly (number | null)[] = before.places;
  for (const swap of swapsBetween(before.keys, keys)) {
    if ('fields' in swap) throw new Error('a key is a text');
    const { at, before: out, after } = swap;
    kept = [...kept.slice(0, at), ...after.map(() => null), ...kept.slice(at + out.length)];
  }
  const places = filled(kept);
  const isBetween = (place: number, i: number): boolean =>
    (i === 0 || place > places[i - 1]!) && (i === places.length - 1 || place < places[i + 1]!);
  const isFound = places.every((place, i) => kept[i] !== null || isBetween(place, i));
  return { keys, places: isFound ? places : keys.map((_, i) => i + 1) };
}

function filled(kept: readonly (number | null)[]): readonly number[] {
  const places: number[] = [];
  let i = 0;
  while (i < kept.length) {
    let end = i;
    while (end < kept.length && kept[end] === null) end += 1;
    const [low, high, count] = [places.at(-1), kept[end], end - i];
    for (let nth = 1; nth <= count; nth += 1) places.push(between(low, high ?? undefined, nth, count));
    if (end < kept.length) places.push(kept[end]!);
    i = end + 1;
  }
  return places;
}

/** The nth of so many places between two, beyond one or before one. */
function between(low: number | undefined, high: number | undefined, nth: number, count: number): number {
  if (low !== undefined && high !== undefined) return low + ((high - low) * nth) / (count + 1);
  return low === undefined && high !== undefined ? high - count - 1 + nth : (low ?? 0) + nth;
}
