/** The least gap that is wanted to a measured point or a body line. */

/** The record with that gap, mm; without one where it is null. */
export function withLeastGap<R extends { readonly leastGap?: number }>(record: R, gap: number | null): R {
  if ((record.leastGap ?? null) === gap) return record;
  const { leastGap: _before, ...rest } = record;
  return (gap === null ? rest : { ...rest, leastGap: gap }) as R;
}
