/** Records that have no id: two are told apart by all that counts of them, and of equal ones as many count as there are. */

/** Those for which there is no equal one (by `keyOf`) among the others, each of which stands for one. In their order. */
export function beyond<R>(records: readonly R[], others: readonly R[], keyOf: (record: R) => string): readonly R[] {
  const left = new Map<string, number>();
  for (const other of others) left.set(keyOf(other), (left.get(keyOf(other)) ?? 0) + 1);
  return records.filter((record) => {
    const equal = left.get(keyOf(record)) ?? 0;
    left.set(keyOf(record), equal - 1);
    return equal <= 0;
  });
}
