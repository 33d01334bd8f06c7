/**
 * Two states of a job brought to one set of ids: what has one id in both is one thing, and one thing has one id. Which it is says
 * same-thing.ts. What was drawn or read in both and is alike to the last figure is one thing under whatever ids, and so is a point that
 * is called as one of ours: who takes over from the other and sends it back finds nothing twice.
 */
import { sameData } from '../job/equal.ts';
import { COLLECTIONS, kindOf } from '../job/kinds.ts';
import { bareId, pieceNamed } from '../job/reference.ts';
import type { Collection, Job } from '../job/types.ts';
import { isSameThing } from './same-thing.ts';
import { withIds, type NewIds } from './with-ids.ts';

/**
 * `other` by the ids of `job`: of what is only there and has the id of another thing here, by one that neither job has. The very same
 * `other` where nothing has to be renamed. List after list, so that what refers is held against what refers as soon as it is known where to.
 */
export function alignedTo(job: Job, other: Job): Job {
  return COLLECTIONS.reduce((theirs, list) => withIds(theirs, list, newIds(list, job, theirs)), other);
}

type R = Job[Collection][number];

function newIds(list: Collection, job: Job, other: Job): NewIds {
  const [ours, theirs]: readonly [readonly R[], readonly R[]] = [job[list], other[list]];
  const here = new Map<string, R>(ours.map((record) => [record.id, record]));
  const isKnown = (record: R): boolean => here.has(record.id) && isSameThing(list, here.get(record.id)!, record);
  const known = theirs.filter(isKnown);
  const strange = theirs.filter((record) => !isKnown(record));
  if (strange.length === 0) return NO_IDS;
  const knownIds = new Set(known.map(({ id }) => id));
  const left = new Set(ours.filter(({ id }) => !knownIds.has(id)));
  const ids = new Map<string, string>();
  const waiting: R[] = [];
  for (const record of strange) {
    const twin =
      [...left].find((one) => isAlike(one, record)) ?? (list === 'points' ? called(left, record) : undefined);
    if (twin === undefined) waiting.push(record);
    else {
      left.delete(twin);
      if (twin.id !== record.id) ids.set(record.id, twin.id);
    }
  }
  const clashing = waiting.filter(({ id }) => here.has(id));
  if (clashing.length === 0) return ids;
  const taken = new Set([...wordsIn(job), ...wordsIn(other)]);
  const { letter } = kindOf(list);
  const mark = job.idMark === undefined ? '' : `-${job.idMark}`;
  let number = 0;
  for (const { id } of clashing) {
    do number += 1;
    while (taken.has(`${letter}${number}${mark}`));
    ids.set(id, `${letter}${number}${mark}`);
  }
  return ids;
}

const NO_IDS: NewIds = new Map();

const isAlike = (ours: object, theirs: object): boolean => sameData({ ...ours, id: '' }, { ...theirs, id: '' });

function called<R extends object>(ours: ReadonlySet<R>, theirs: R): R | undefined {
  const nameOf = (record: object): string => ('name' in record ? String(record.name).toLowerCase() : '');
  return [...ours].find((one) => nameOf(one) === nameOf(theirs));
}

/** All text of a job, without prime and piece: no id that stands anywhere, be its record there or not, is given again. */
function wordsIn(value: unknown): readonly string[] {
  if (typeof value === 'string') return [bareId(value), pieceNamed(value)?.member ?? ''];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, item]) => [...wordsIn(key), ...wordsIn(item)]);
}
