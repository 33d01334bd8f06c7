/** What to get for the parts that a plan has no stick for. */
import { ROUNDING } from '../geometry/tolerance.ts';
import { planCuts } from './plan-cuts.ts';
import type { ToCut } from './to-cut.ts';
import type { CutPlan, Part, StickSort } from './types.ts';

/** Sticks to get. */
export interface Wanting {
  /** too-long: no stick of the section is long enough. batch: one of their batch is wanted, and there is none, or no more. too-few: there are not enough. */
  readonly why: 'too-long' | 'batch' | 'too-few';
  /** The tubes and spares that wait for them. */
  readonly parts: readonly Part[];
  /** So many, 1 and more. */
  readonly count: number;
  /** Of each, mm; of `too-long` the least that will do. */
  readonly length: number;
  readonly batch: string | null;
}

/** One entry for each length and batch to get; nothing where all is placed. Parts that come out at nothing want no stick. */
export function wantingFor({ sticks, sawing }: ToCut, { unplaced }: CutPlan): readonly Wanting[] {
  const parts = unplaced.filter(({ length }) => length > 0);
  const longest = Math.max(0, ...sticks.map(({ length }) => length));
  const isTooLong = ({ length }: Part): boolean => length + sawing.squareOff > longest + ROUNDING;
  const tooLong = parts.filter(isTooLong).map((part): Wanting => ({
    why: 'too-long',
    parts: [part],
    count: 1,
    length: part.length + sawing.squareOff,
    batch: part.batch,
  }));
  const rest = parts.filter((part) => !isTooLong(part));
  const batches = [...new Set(rest.map(({ batch }) => batch))];
  return [
    ...tooLong,
    ...batches.flatMap((batch) => {
      const ofBatch = rest.filter((part) => part.batch === batch);
      return bought(
        ofBatch,
        sticks,
        batch,
        planCuts(ofBatch, endless(sticks, batch, longestOf(ofBatch) + sawing.squareOff), sawing),
      );
    }),
  ];
}

const longestOf = (parts: readonly Part[]): number => Math.max(...parts.map(({ length }) => length));

/** As many as are wanted of each length that can be bought, or of the longest that there is where nobody said what can be; those of a batch count as of that batch. */
function endless(sticks: readonly StickSort[], batch: string | null, least: number): readonly StickSort[] {
  const bought = sticks.filter(({ count, length }) => count === Infinity && length >= least);
  const longest = sticks.toSorted((one, other) => other.length - one.length).slice(0, 1);
  return (bought.length > 0 ? bought : longest).map((stick) => ({
    ...stick,
    count: Infinity,
    batch: batch ?? stick.batch,
  }));
}

function bought(
  parts: readonly Part[],
  sorts: readonly StickSort[],
  batch: string | null,
  plan: CutPlan,
): readonly Wanting[] {
  const lengthOf = new Map(sorts.map(({ id, length }) => [id, length]));
  const lengths = [...new Set(plan.sticks.map(({ stick }) => lengthOf.get(stick)!))];
  return lengths.map((length): Wanting => {
    const those = plan.sticks.filter(({ stick }) => lengthOf.get(stick) === length);
    const on = new Set(those.flatMap((stick) => stick.parts));
    return {
      why: batch === null ? 'too-few' : 'batch',
      parts: parts.filter((part) => on.has(part)),
      count: those.length,
      length,
      batch,
    };
  });
}
