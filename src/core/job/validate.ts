/**
 * What the shape of a job cannot check: ids are unique, references lead somewhere, lists are not too long, and what each kind
 * of record says of itself (kinds.ts). Whether references form a loop, and whether the tubes can be bent at all, is found
 * when the job is derived.
 */
import { remembered } from '../remembered.ts';
import { fault, quoted, type Fault } from './fault.ts';
import { atMost } from './kinds/faults.ts';
import { numberFaults } from './kinds/numbers.ts';
import { isReference, type Listed, type Reference } from './kinds/kind.ts';
import { obstaclePart } from './kinds/obstacle.ts';
import { placeOfList } from './in-blocks.ts';
import { COLLECTIONS, kindOf, LISTS } from './kinds.ts';
import { memberOfTube } from './member-of-tube.ts';
import { bareId, isPrimed, pieceId } from './reference.ts';
import type { Collection, Job, List } from './types.ts';

/** All that is wrong with a well-shaped job: list after list, then which of them are too long, then numbers given twice. */
export const jobFaults = (job: Job): readonly Fault[] => [
  ...listFaults(listsOf(job), job),
  ...numberFaults(job.numbers),
];

/** The same of any lists: `among` are those that references lead into. */
export function listFaults(lists: readonly RecordList[], among: Among): readonly Fault[] {
  const tooLong = lists.flatMap(({ place, kind, records }) => atMost(kind.most ?? Infinity, records, place));
  return [...lists.flatMap((list) => faultsIn(list, among)), ...tooLong];
}

type Among = Partial<Pick<Job, Collection>>;

export interface RecordList {
  readonly place: string;
  readonly kind: Pick<Listed<object>, 'most' | 'beyondShape'> & { readonly letter?: string };
  readonly records: readonly object[];
}

/** The records that have ids, then what stands round each bender, then the other records. */
function listsOf(job: Job): readonly RecordList[] {
  const named = new Set<string>(COLLECTIONS);
  const listOf = (list: List): RecordList => ({ place: placeOfList(list), kind: kindOf(list), records: job[list] });
  const rooms = job.dies.flatMap(({ bender }, i): RecordList[] =>
    bender === undefined ? [] : [{ place: `dies[${i}].bender.room`, kind: obstaclePart, records: bender.room }],
  );
  return [...COLLECTIONS.map(listOf), ...rooms, ...LISTS.filter((list) => !named.has(list)).map(listOf)];
}

function faultsIn({ place, kind, records }: RecordList, among: Among): readonly Fault[] {
  const faults = kind.letter === undefined ? [] : duplicates(place, records as readonly { readonly id: string }[]);
  if (kind.beyondShape === undefined) return faults;
  for (const [i, record] of records.entries()) {
    for (const item of kind.beyondShape(record, `${place}[${i}]`, i, records)) {
      const found = isReference(item) ? leadsNowhere(item, among) : item;
      if (found !== null) faults.push(found);
    }
  }
  return faults;
}

function duplicates(list: string, records: readonly { readonly id: string }[]): Fault[] {
  const first = new Map<string, number>();
  const faults: Fault[] = [];
  records.forEach(({ id }, index) => {
    const before = first.get(id);
    if (before === undefined) first.set(id, index);
    else faults.push(fault(`${list}[${index}].id`, `${quoted(id)} is already ${list}[${before}]`));
  });
  return faults;
}

/** null where a record of that id is there, and its mirror image where the reference has a prime. */
function leadsNowhere({ place, list, to, made, remedy = '' }: Reference, among: Among): Fault | null {
  const { word, hasImage } = kindOf(list);
  const whole = byId(among[list] ?? NONE).get(hasImage === undefined ? to : bareId(to));
  const record = made ? memberOfTube(among.members ?? NONE, to) : whole;
  if (record === undefined && whole !== undefined) {
    return fault(place, `${quoted(to)} is made in pieces: name one of them, ${quoted(pieceId(to, 1))}`);
  }
  if (record === undefined) return fault(place, `no ${word} ${quoted(to)}`);
  if (hasImage === undefined || !isPrimed(to) || hasImage(record)) return null;
  return fault(place, `no ${word} ${quoted(to)}: ${quoted(record.id)} is not mirrored${remedy}`);
}

const NONE: readonly never[] = [];

const byId = remembered(
  (records: Job[Collection]): ReadonlyMap<string, Job[Collection][number]> =>
    new Map((records as readonly Job[Collection][number][]).map((record) => [record.id, record])),
);
