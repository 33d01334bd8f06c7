/** What to get for the parts that a plan has no stick for. */
import { ROUNDING } from '../geometry/tolerance.ts';
import { planCuts } from './plan-cuts.ts';
import type { ToCut } from './to-cut.ts';
import type { CutPlan, Part, Sawing, StickSort } from './types.ts';

/** Sticks to get. */
export interface Wanting {
  /**
   * none-listed: the section has no stick, nor is it said how long those are that it is bought in. too-long: no stick of the section is long enough. batch: one of their batch is wanted, and there is none, or no more. too-few: there are
   * not enough. not-found: there may be enough, but nobody found how.
   */
  readonly why: 'none-listed' | 'too-long' | 'batch' | 'too-few' | 'not-found';
  /** The tubes and spares that wait for them. */
  readonly parts: readonly Part[];
  /** So many, 1 and more. */
  readonly count: number;
  /** Of each, mm; of `none-listed` and `too-long` the least that will do. */
  readonly length: number;
  readonly batch: string | null;
}

/** One entry for each length and batch to get; nothing where all is placed. Parts that come out at nothing want no stick. */
export function wantingFor(section: ToCut, { unplaced, unfound }: CutPlan): readonly Wanting[] {
  const { sticks, bought, sawing } = section;
  const parts = unplaced.filter(({ length }) => length > 0);
  if (parts.length === 0) return [];
  const longest = Math.max(bought ?? 0, longestOf(sticks));
  if (longest === 0) return noneListed(parts, section);
  const isTooLong = ({ length }: Part): boolean => length + sawing.squareOff > longest + ROUNDING;
  const rest = parts.filter((part) => !isTooLong(part));
  const batches = [...new Set(rest.map(({ batch }) => batch))];
  const untold = new Set(unfound);
  return [
    ...tooLong(parts.filter(isTooLong), sawing),
    ...batches.flatMap((batch) => {
      const ofBatch = rest.filter((part) => part.batch === batch);
      const sorts = endless(section, batch, longestOf(ofBatch) + sawing.squareOff);
      const why = ofBatch.some((part) => untold.has(part)) ? 'not-found' : batch === null ? 'too-few' : 'batch';
      return sticksFor(ofBatch, sorts, { why, batch }, planCuts(ofBatch, sorts, sawing));
    }),
  ];
}

/** mm; 0 of nothing. */
const longestOf = (those: readonly { readonly length: number }[]): number =>
  those.reduce((longest, { length }) => Math.max(longest, length), 0);

/** As many as would do of the least length in which all can be cut. */
function noneListed(parts: readonly Part[], { sawing }: ToCut): readonly Wanting[] {
  const length = longestOf(parts) + sawing.squareOff;
  const sort: StickSort = { id: '', length, count: Infinity, cost: length, batch: null };
  const { sticks } = planCuts(
    parts.map((part) => ({ ...part, batch: null })),
    [sort],
    sawing,
  );
  return [{ why: 'none-listed', parts, count: sticks.length, length, batch: null }];
}

/** Each on a stick of its own; alike ones together. */
function tooLong(parts: readonly Part[], { squareOff }: Sawing): readonly Wanting[] {
  const alike = new Map<string, Part[]>();
  for (const part of parts) {
    const key = JSON.stringify([part.length, part.batch]);
    const those = alike.get(key);
    if (those === undefined) alike.set(key, [part]);
    else those.push(part);
  }
  return [...alike.values()].map((those): Wanting => {
    const [{ length, batch }] = those as [Part, ...Part[]];
    return { why: 'too-long', parts: those, count: those.length, length: length + squareOff, batch };
  });
}

/** As many as are wanted of each length that can be bought, or of the longest that there is where nobody said what can be; those of a batch count as of that batch. */
function endless({ sticks, bought }: ToCut, batch: string | null, least: number): readonly StickSort[] {
  const toBuy = sticks.filter(({ count, length }) => count === Infinity && length >= least - ROUNDING);
  const usual: readonly StickSort[] =
    bought !== null && bought >= least - ROUNDING
      ? [{ id: '', length: bought, count: Infinity, cost: bought, batch: null }]
      : sticks.toSorted((one, other) => other.length - one.length).slice(0, 1);
  return (toBuy.length > 0 ? toBuy : usual).map((stick) => ({
    ...stick,
    count: Infinity,
    batch: batch ?? stick.batch,
  }));
}

function sticksFor(
  parts: readonly Part[],
  sorts: readonly StickSort[],
  { why, batch }: Pick<Wanting, 'why' | 'batch'>,
  plan: CutPlan,
): readonly Wanting[] {
  const lengthOf = new Map(sorts.map(({ id, length }) => [id, length]));
  const lengths = [...new Set(plan.sticks.map(({ stick }) => lengthOf.get(stick)!))];
  return lengths.map((length): Wanting => {
    const those = plan.sticks.filter(({ stick }) => lengthOf.get(stick) === length);
    const on = new Set(those.flatMap((stick) => stick.parts));
    return {
      why,
      parts: parts.filter((part) => on.has(part)),
      count: those.length,
      length,
      batch,
    };
  });
}
