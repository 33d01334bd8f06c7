/** Fresh ids for new records: a letter for the collection and the first number that is free, n12. */
import type { Job } from '../job/types.ts';
import type { Collection } from '../job/validate.ts';

const LETTER: Readonly<Record<Collection, string>> = {
  points: 'p',
  bodyLines: 'l',
  sections: 's',
  dies: 'd',
  nodes: 'n',
  members: 'm',
  envelopes: 'e',
};

/** An id that no record of the collection has. Numbers go up from the count of records, so that ids follow the list. */
export function nextId(job: Job, collection: Collection): string {
  const taken = new Set<string>(job[collection].map(({ id }) => id));
  let number = taken.size + 1;
  while (taken.has(`${LETTER[collection]}${number}`)) number += 1;
  return `${LETTER[collection]}${number}`;
}
