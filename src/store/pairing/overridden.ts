/** What two devices wrote in one field, neither knowing of the other, as it is shown to a person. */
import type { Replica } from '../../core/sharing/replica.ts';
import { keyOf, type Cells } from '../../core/sharing/entries.ts';
import { HEAD } from '../../core/sharing/laid-out.ts';
import { recordIn } from '../../core/sharing/record-in.ts';
import { bare, writtenTwice, type WrittenTwice } from '../../core/sharing/written-twice.ts';
import { bareId, type TubeRef } from '../../core/job/reference.ts';
import { shownName } from '../../core/job/shown.ts';
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
      record: nameIn(cells, job, list, key),
      field: field.join(' ') || key,
      by: nameOf(twice.other.device),
      theirs: bare(twice.other),
      counts: bare(twice.counts),
    };
    return { shown, twice };
  });
}

/** The record's name; of one that has none the tube and the bend that it is of, or its batch. */
function nameIn(cells: Cells, job: Job, list: string, key: string): string {
  const group = cells.get(keyOf([list, key]));
  const { name, tube, bend, batch } = (group && list !== HEAD ? recordIn(group).record : {}) as Partial<Named>;
  if (name !== undefined) return shownName(name);
  if (tube === undefined) return batch ?? (list === HEAD ? key : '');
  const of = job.members.find(({ id }) => id === bareId(tube))?.name ?? tube;
  return bend === undefined ? shownName(of) : `${shownName(of)}, bend ${bend}`;
}

interface Named {
  readonly name: string;
  readonly tube: TubeRef;
  readonly bend: number;
  readonly batch: string;
}
