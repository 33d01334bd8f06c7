/**
 * Lists that a file holds within a block: `survey.measurements` is the job's `measurements`. Between the two there is nothing but
 * this; faults name the place in the file.
 */
import { kindOf, LISTS } from './kinds.ts';
import type { Job, List } from './types.ts';

/** The lists that stand at the top of a file, under their own names, and those within a block. */
export const AT_TOP: readonly List[] = LISTS.filter((list) => kindOf(list).within === undefined);
const WITHIN: readonly List[] = LISTS.filter((list) => kindOf(list).within !== undefined);

/** Where a file holds the list: points, survey.measurements. */
export const placeOfList = (list: List): string => kindOf(list).within?.join('.') ?? list;

type Data = Readonly<Record<string, unknown>>;

/** The job's lists out of their blocks; a block with nothing else in it goes. */
export function outOfBlocks(file: object): object {
  const job: Record<string, unknown> = { ...file };
  for (const list of WITHIN) {
    const [block, key] = kindOf(list).within!;
    const held = job[block];
    const { [key]: records = [], ...rest }: Data = typeof held === 'object' && held !== null ? { ...held } : {};
    job[list] = records;
    if (Object.keys(rest).length > 0) job[block] = rest;
    else delete job[block];
  }
  return job;
}

/** The lists back in their blocks, as a file holds them; empty ones are left out. */
export function intoBlocks(job: Partial<Job>): object {
  const file: Record<string, unknown> = { ...job };
  for (const list of WITHIN) {
    const [block, key] = kindOf(list).within!;
    const records = job[list];
    delete file[list];
    if (records !== undefined && records.length > 0) file[block] = { ...(file[block] as object), [key]: records };
  }
  return file;
}
