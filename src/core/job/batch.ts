/** Heats and batches as a person compares them: by what is read, whatever the case of its letters and however many blanks stand in it. In files and on screens they stand as they were typed. */

/** The same of any two that are one batch; null: of none, also where its name is nothing but blanks. */
export function batchKey(batch: string | null | undefined): string | null {
  const read = (batch ?? '').normalize('NFC').trim().replace(/\s+/gu, ' ').toUpperCase();
  return read === '' ? null : read;
}

/** Whether both are of one batch, or both of none. */
export const isSameBatch = (one: string | null | undefined, other: string | null | undefined): boolean =>
  one === other || batchKey(one) === batchKey(other);

/** Of each batch the first that names it, as typed; those of none are left out. */
export function batchesOnce(named: readonly { readonly batch?: string }[]): readonly string[] {
  const once = new Map<string, string>();
  for (const { batch } of named) {
    const key = batchKey(batch);
    if (key !== null && !once.has(key)) once.set(key, batch!);
  }
  return [...once.values()];
}
