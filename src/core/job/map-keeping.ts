/** The list with every item changed; the same list when none was, so that `===` goes on to mean unchanged. */
export function mapKeeping<T>(items: readonly T[], change: (item: T, index: number) => T): readonly T[] {
  const next = items.map(change);
  return next.every((item, index) => item === items[index]) ? items : next;
}
