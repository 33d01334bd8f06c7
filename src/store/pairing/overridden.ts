/** What two devices wrote in one field, neither knowing of the other, as it is shown to a person. */
import type { Replica } from '../../core/sharing/replica.ts';
import { keyOf } from '../../core/sharing/entries.ts';
import { writtenTwice, type WrittenTwice } from '../../core/sharing/written-twice.ts';
import type { Job } from '../../core/job/types.ts';
import type { Overridden } from './types.ts';

export interface Twice {
  readonly shown: Overridden;
  readonly twice: WrittenTwice;
}

/** All of them; `nameOf` says what a device is called. */
export function overriddenIn({ cells, shown: { job } }: Replica, nameOf: (device: string) => string): readonly Twice[] {
  return writtenTwice(cells).map((twice) => {
    const { path } = twice.counts;
    const [list = '', key = '', ...field] = path;
    const shown: Overridden = {
      key: `${keyOf(path)} ${twice.other.device} ${twice.other.at}`,
      list,
      record: nameIn(job, list, key),
      field: field.join(' ') || key,
      by: nameOf(twice.other.device),
      theirs: twice.other.value,
      counts: twice.counts.value,
    };
    return { shown, twice };
  });
}

/** The record's name; of those that go by a tube the tube's. */
function nameIn(job: Job, list: string, key: string): string {
  const records = (job as unknown as Readonly<Record<string, unknown>>)[list];
  const found = Array.isArray(records)
    ? (records as readonly { id?: string; name?: string }[]).find(({ id }) => id === key)
    : undefined;
  return found?.name ?? job.members.find(({ id }) => id === key)?.name ?? key;
}
