/**
 * What the lists of a job go by when two devices write in them. Records with ids go by these. Of others there is one of a kind for each tube, or
 * finding: they go by that, and two devices that write of the same tube write in the same record. Pulls, certificates, sample bends and
 * the like have nothing that tells them apart: each goes by a name that the device gives it which adds it, so that two alike are two.
 *
 * What is measured on a tube at the bender stands in lists within its record: each bend, check and ticked step is a cell of its own there.
 */
import { COLLECTIONS, LISTS } from '../job/kinds.ts';
import type { BentTube } from '../job/kinds/bent.ts';
import type { Hold } from '../job/kinds/hold.ts';
import type { RuleSheet } from '../job/kinds/rule-sheet.ts';
import type { Seen } from '../job/kinds/seen.ts';
import type { Plain, PlainObject } from '../job/plain.ts';
import type { List } from '../job/types.ts';

/** A list of objects, wherever in the job it stands. */
export interface SharedList {
  /** Its place in the job: points; survey, samples. */
  readonly at: readonly string[];
  /** What a record goes by; absent: by the name that the device gave it. */
  keyOf?(record: PlainObject): string;
  /**
   * Of what was taken out nothing comes again, whatever is written in it: a bend run that is begun anew is of another piece of steel. Two that are there under
   * one natural key are one.
   */
  readonly isOver?: true;
  /** Lists within a record, by field, with what an item goes by. */
  readonly within?: Readonly<Record<string, (item: Plain) => string>>;
}

/** A rule for a list of the job, held against its records' type. */
const natural =
  <R>(key: (record: R) => string): ((record: PlainObject) => string) =>
  (record) =>
    key(record as unknown as R);

const byId = natural<{ readonly id: string }>(({ id }) => id);
const byTube = natural<{ readonly tube: string }>(({ tube }) => tube);

type BentItem<F extends keyof BentTube> = NonNullable<BentTube[F]> extends readonly (infer I)[] ? I : never;

const item =
  <I>(key: (one: I) => string): ((one: Plain) => string) =>
  (one) =>
    typeof one === 'object' && one !== null ? key(one as unknown as I) : String(one);

const WITHOUT_IDS: Partial<Record<List, Omit<SharedList, 'at'>>> = {
  holds: { keyOf: natural<Hold>(({ point, axis }) => `${axis} ${point}`) },
  rules: { keyOf: natural<RuleSheet>(({ sheet }) => sheet) },
  seen: { keyOf: natural<Seen>(({ finding, tube, end, bend }) => [finding, tube, end, bend].join(' ')) },
  bent: {
    keyOf: byTube,
    isOver: true,
    within: {
      done: String,
      bends: item<BentItem<'bends'>>(({ bend }) => String(bend)),
      checks: item<BentItem<'checks'>>(({ check }) => check),
      seat: item<BentItem<'seat'>>(({ at }) => at),
    },
  },
  made: { keyOf: byTube },
  feeds: { keyOf: byTube },
  printed: { keyOf: byTube },
};

const WITH_IDS = new Set<string>(COLLECTIONS);

const ofJob = (list: List): SharedList => ({
  at: [list],
  ...(WITH_IDS.has(list) ? { keyOf: byId } : WITHOUT_IDS[list]),
});

/** Lists in the blocks of the job that are no collections. */
const IN_BLOCKS: readonly (readonly string[])[] = [
  ['survey', 'samples'],
  ['quote', 'took'],
  ['quote', 'extras'],
  ['tools', 'notchers'],
  ['tools', 'saws'],
];

/** By the name that paths begin with: points, survey.samples. */
export const SHARED_LISTS: ReadonlyMap<string, SharedList> = new Map(
  [...LISTS.map(ofJob), ...IN_BLOCKS.map((at): SharedList => ({ at }))].map((list) => [list.at.join('.'), list]),
);
