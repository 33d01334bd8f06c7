/** Fresh ids for new records: a letter for the collection and the first number that is free, n12; with the mark of the device, n12-k3x, where several make them. */
import { kindOf } from '../job/kinds.ts';
import type { Collection, Job } from '../job/types.ts';

/** An id that no record of the collection has, nor stands among `gone`. Numbers go up from the count of records, so that ids follow the list. */
export function nextId(job: Job, collection: Collection, gone: readonly string[] = []): string {
  const taken = new Set<string>([...job[collection].map(({ id }) => id), ...gone]);
  const { letter } = kindOf(collection);
  const mark = job.idMark === undefined ? '' : `-${job.idMark}`;
  let number = taken.size + 1;
  while (taken.has(`${letter}${number}${mark}`)) number += 1;
  return `${letter}${number}${mark}`;
}
