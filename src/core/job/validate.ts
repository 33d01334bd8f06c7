/**
 * What the shape of a job cannot tell: ids are unique, references lead somewhere, lists are not too long, and what each kind
 * of record says of itself (kinds.ts). Whether references form a loop, and whether the tubes can be bent at all, is found
 * when the job is derived.
 */
import { remembered } from '../remembered.ts';
import { fault, quoted, type Fault } from './fault.ts';
import { atMost } from './kinds/faults.ts';
import { isReference, type Listed, type Reference } from './kinds/kind.ts';
import { obstaclePart } from './kinds/obstacle.ts';
import { COLLECTIONS, kindOf, LISTS } from './kinds.ts';
import { bareId, isPrimed } from './reference.ts';
import type { Collection, Job, List } from './types.ts';

/** All that is wrong with a well-shaped job: list after list, then which of them are too long. */
export function jobFaults(job: Job): readonly Fault[] {
  const lists = listsOf(job);
  const tooLong = lists.flatMap(({ place, kind, records }) => atMost(kind.most ?? Infinity, records, place));
  return [...lists.flatMap((list) => [...faultsIn(list, job)]), ...tooLong];
}

interface RecordList {
  readonly place: string;
  readonly kind: Pick<Listed<object>, 'most' | 'beyondShape'> & { readonly letter?: string };
  readonly records: readonly object[];
}

/** The records that have ids, then what stands round each bender, then the other records. */
function listsOf(job: Job): readonly RecordList[] {
  const named = new Set<string>(COLLECTIONS);
  const listOf = (place: List): RecordList => ({ place, kind: kindOf(place), records: job[place] });
  const rooms = job.dies.flatMap(({ bender }, i): RecordList[] =>
    bender === undefined ? [] : [{ place: `dies[${i}].bender.room`, kind: obstaclePart, records: bender.room }],
  );
  return [...COLLECTIONS.map(listOf), ...rooms, ...LISTS.filter((list) => !named.has(list)).map(listOf)];
}

function* faultsIn({ place, kind, records }: RecordList, job: Job): Generator<Fault> {
  if (kind.letter !== undefined) yield* duplicates(place, records as readonly { readonly id: string }[]);
  for (const [i, record] of records.entries()) {
    for (const item of kind.beyondShape?.(record, i, records) ?? []) {
      const at = `${place}[${i}].${item.place}`;
      if (!isReference(item)) yield fault(at, item.message);
      else yield* leadsNowhere(item, job, at);
    }
  }
}

function* duplicates(list: string, records: readonly { readonly id: string }[]): Generator<Fault> {
  const first = new Map<string, number>();
  for (const [index, { id }] of records.entries()) {
    const before = first.get(id);
    if (before === undefined) first.set(id, index);
    else yield fault(`${list}[${index}].id`, `${quoted(id)} is already ${list}[${before}]`);
  }
}

/** A record of that id is there, and where the reference has a prime, so is the record's mirror image. */
function* leadsNowhere({ list, to, remedy = '' }: Reference, job: Job, at: string): Generator<Fault> {
  const { word, hasImage } = kindOf(list);
  const record = byId(job[list]).get(hasImage === undefined ? to : bareId(to));
  if (record === undefined) yield fault(at, `no ${word} ${quoted(to)}`);
  else if (isPrimed(to) && hasImage?.(record) === false) {
    yield fault(at, `no ${word} ${quoted(to)}: ${quoted(record.id)} is not mirrored${remedy}`);
  }
}

const byId = remembered(
  (records: Job[Collection]): ReadonlyMap<string, Job[Collection][number]> =>
    new Map((records as readonly Job[Collection][number][]).map((record) => [record.id, record])),
);
