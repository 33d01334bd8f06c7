/** What a person may choose among: the things of a job, and their mirror images. */
import { shownName } from '../../core/job/shown.ts';

/** Every reference that may be made to these records: each, and its mirror image. */
export const withImages = (records: readonly { id: string; name: string }[]): { value: string; label: string }[] =>
  records.flatMap((record) => {
    const name = shownName(record.name) || record.id;
    return [
      { value: record.id, label: name },
      { value: `${record.id}'`, label: `${name}, mirrored` },
    ];
  });
