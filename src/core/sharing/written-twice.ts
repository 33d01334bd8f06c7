/** Cells that two devices wrote in, neither knowing of what the other wrote: the later counts, and both are shown. */
import { sameData } from '../job/equal.ts';
import type { Plain } from '../job/plain.ts';
import { isUnknownTo, type Cells, type Entry, type Group } from './entries.ts';
import { PLACE } from './laid-out.ts';
import { itemIn, recordIn } from './record-in.ts';

export interface WrittenTwice {
  readonly counts: Entry;
  /** Written before it and not known to whoever wrote it; another value. */
  readonly other: Entry;
}

/** In the order of the cells. Places in lists and numbers of tubes are left out, which are put right by themselves; and what stands in a record that is gone. */
export function writtenTwice(cells: Cells): readonly WrittenTwice[] {
  const found: WrittenTwice[] = [];
  for (const group of cells.values()) {
    const twice = [...group.values()].filter(({ others }) => others.length > 0);
    if (twice.length === 0 || isGone(group)) continue;
    for (const { path, counts, others } of twice) {
      if (path[2] === PLACE || NUMBERED.has(path[1]!)) continue;
      for (const other of others) {
        if (isUnknownTo(other, counts) && !sameData(bare(other), bare(counts))) found.push({ counts, other });
      }
    }
  }
  return found;
}

const NUMBERED: ReadonlySet<string> = new Set(['numbers', 'lastNumber']);

const isGone = (group: Group): boolean => group.has(PLACE) && recordIn(group).isGone;

/** What was written, without the place that an item of a list within a record has. */
export const bare = ({ path, value }: Entry): Plain | undefined =>
  path.length === 4 && value !== undefined ? itemIn(value) : value;
