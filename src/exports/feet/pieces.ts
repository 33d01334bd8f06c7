/** What of a job's feet is to be cut: for each foot that an end stands on its pieces, and how many of each. */
import type { Derived } from '../../core/derive.ts';
import { blanksOf, type Blank } from '../../core/feet/blanks.ts';
import { handsOf } from '../../core/feet/hands.ts';
import type { Outline } from '../../core/feet/outline.ts';
import { standsOf, type Stand } from '../../core/feet/stand.ts';
import type { Foot } from '../../core/job/kinds/foot.ts';
import { countInWords, PART_NAMES } from '../../core/words/feet.ts';
import { endMark } from '../shared/wrap-words.ts';

export interface Piece {
  /** F2: the second foot of the job. */
  readonly mark: string;
  readonly foot: Foot;
  readonly blank: Blank;
  /** "F2 Sill box: long wall". */
  readonly title: string;
  readonly count: string;
  /** "1 B, 2 B": the ends that stand on such a foot. */
  readonly under: string;
  /** Where tubes stand on it, each different outline once. */
  readonly outlines: readonly { readonly outline: Outline; readonly under: string }[];
}

/** In the order of the job's feet; those that nothing stands on are left out. */
export function piecesOf({ tubes, job }: Derived): readonly Piece[] {
  const stands = tubes.flatMap(standsOf);
  return job.feet.flatMap((foot, i) => {
    const on = stands.filter((stand) => stand.foot.id === foot.id);
    if (on.length === 0) return [];
    const twins = on.filter(({ mirrored }) => mirrored).length;
    const mark = `F${i + 1}`;
    return blanksOf(foot).map((blank): Piece => ({
      mark,
      foot,
      blank,
      title: `${mark} ${foot.name}: ${PART_NAMES[blank.part]}`,
      count: countInWords(blank, on.length - twins, twins, handsOf(foot), job.lengthUnit),
      under: markedUnder(on),
      outlines: blank.part === 'plate' || blank.part === 'top' ? outlinesOf(on) : [],
    }));
  });
}

const markedUnder = (stands: readonly Stand[]): string => stands.map(endMark).join(', ');

/** mm. Nobody marks a plate finer: outlines nearer than this are one. */
const SAME_MARK = 0.05;

function outlinesOf(stands: readonly Stand[]): Piece['outlines'] {
  const groups: { readonly outline: Outline; readonly stands: Stand[] }[] = [];
  for (const stand of stands) {
    const { outline } = stand;
    if (outline === null) continue;
    const known = groups.find((group) => isSame(group.outline, outline));
    if (known === undefined) groups.push({ outline, stands: [stand] });
    else known.stands.push(stand);
  }
  return groups.map((group) => ({ outline: group.outline, under: markedUnder(group.stands) }));
}

function isSame(a: Outline, b: Outline): boolean {
  // What an ellipse is apart from its middle: its half axes, and how far the long one leans by what it is longer.
  const leaning = ({ half: [long, short], lean: [x, y] }: Outline) => [(long - short) * x * x, (long - short) * x * y];
  const figures = (each: Outline): number[] => [...each.centre, ...each.half, ...leaning(each)];
  const others = figures(b);
  return figures(a).every((figure, i) => Math.abs(figure - others[i]!) <= SAME_MARK);
}
