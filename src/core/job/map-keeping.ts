/** Lists of plain data changed item by item, so that `===` goes on to mean unchanged. */
import { sameData } from './equal.ts';

/** The list with every item changed. An item that comes out the same stays the same object, and so does a list of such. */
export function mapKeeping<T>(items: readonly T[], change: (item: T, index: number) => T): readonly T[] {
  const next = items.map((item, index) => {
    const changed = change(item, index);
    return sameData(changed, item) ? item : changed;
  });
  return next.every((item, index) => item === items[index]) ? items : next;
}
