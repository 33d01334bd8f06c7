/** What a person may choose among: the things of a job, and their mirror images. */

/** Every reference that may be made to these records: each, and its mirror image. */
export const withImages = (records: readonly { id: string; name: string }[]): { value: string; label: string }[] =>
  records.flatMap((record) => [
    { value: record.id, label: record.name || record.id },
    { value: `${record.id}'`, label: `${record.name || record.id}, mirrored` },
  ]);
