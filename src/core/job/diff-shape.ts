/** Whether plain data has the shape of a diff, for diffs that were kept somewhere and come back. */
import * as v from 'valibot';
import type { Change, Swap } from './change.ts';
import type { JobDiff } from './diff.ts';
import { COLLECTIONS } from './kinds.ts';

const changes = v.array(v.lazy(() => change));
const at = v.pipe(v.number(), v.safeInteger(), v.minValue(0));
const items = v.array(v.unknown());
const swaps = v.array(
  v.union([v.strictObject({ at, fields: changes }), v.strictObject({ at, before: items, after: items })]),
);
const change: v.GenericSchema<unknown, Change> = v.union([
  v.strictObject({ key: v.string(), items: swaps, length: at }),
  v.strictObject({ key: v.string(), fields: changes }),
  v.strictObject({ key: v.string(), before: v.exactOptional(v.unknown()), after: v.exactOptional(v.unknown()) }),
]);

/** The first program that kept steps gave the order of a collection as whole lists of ids. */
const wholeOrder = v.pipe(
  v.strictObject({ before: v.array(v.string()), after: v.array(v.string()) }),
  v.transform(({ before, after }): readonly Swap[] => [{ at: 0, before, after }]),
);
const collection = v.object({ records: changes, order: v.exactOptional(v.union([swaps, wholeOrder])) });
const diff = v.object({ head: changes, collections: v.record(v.picklist(COLLECTIONS), collection) });

/** The diff in it, null where it has not the shape of one. Shape alone: whether it fits a job is for fitsJob to say. */
export function readDiff(value: unknown): JobDiff | null {
  const { success, output } = v.safeParse(diff, value, { abortEarly: true });
  return success ? output : null;
}
