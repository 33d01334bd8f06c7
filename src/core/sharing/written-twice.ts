/** Cells that two devices wrote in, neither knowing of what the other wrote: the later counts, and both are shown. */
import { sameData } from '../job/equal.ts';
import { entriesOf, type Cells, type Entry } from './entries.ts';
import { PLACE } from './laid-out.ts';

export interface WrittenTwice {
  readonly counts: Entry;
  /** Written before it and not known to whoever wrote it; another value. */
  readonly other: Entry;
}

/** In the order of the cells. Places in lists are left out: nobody wrote these by hand. */
export function writtenTwice(cells: Cells): readonly WrittenTwice[] {
  const found: WrittenTwice[] = [];
  for (const group of cells.values()) {
    for (const cell of group.values()) {
      if (cell.others.length === 0 || cell.path[2] === PLACE) continue;
      const { counts } = cell;
      for (const other of entriesOf(cell)) {
        if (other.at > counts.over && other !== counts && !sameData(other.value, counts.value))
          found.push({ counts, other });
      }
    }
  }
  return found;
}
