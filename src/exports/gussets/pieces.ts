/** What of a job's gussets is to be cut: each with how many of it, its mirror image among them where that is the same sheet turned over. */
import type { Derived } from '../../core/derive.ts';
import { extentOf } from '../../core/gusset/edges.ts';
import { gussetsOf, isMade, type SetGusset } from '../../core/gusset/gussets.ts';
import type { Sheet } from '../../core/gusset/sheet.ts';
import type { Gusset } from '../../core/job/kinds/gusset.ts';

export interface GussetPiece {
  readonly gusset: Gusset;
  /** "G2 Hoop to stay": the second gusset of the job. */
  readonly title: string;
  readonly count: number;
  readonly sheet: Sheet;
  /** Along which its legs 1 and 2 run. */
  readonly ways: SetGusset['ways'];
}

/** In the order of the job; those that cannot be made are left out. */
export const piecesOf = (derived: Derived): readonly GussetPiece[] =>
  derived.job.gussets.flatMap((gusset, i) => {
    const cut = gussetsOf(derived).flatMap((set) => (set.gusset === gusset ? cutOf(set) : []));
    const [own, image] = cut;
    if (own === undefined) return [];
    const piece = (one: Cut, count: number, mark: string): GussetPiece => ({
      gusset,
      title: `${mark} ${gusset.name}`,
      count,
      ...one,
    });
    const mark = `G${i + 1}`;
    if (image === undefined || isAlike(own.sheet, image.sheet)) return [piece(own, cut.length, mark)];
    return [piece(own, 1, mark), piece(image, 1, `${mark}'`)];
  });

type Cut = Pick<GussetPiece, 'sheet' | 'ways'>;

const cutOf = ({ made, ways }: SetGusset): readonly Cut[] => (isMade(made) ? [{ sheet: made.sheet, ways }] : []);

/** mm. A sheet is cut no finer; where tubes stand as they were built, the two sides of the car may differ by more. */
const ALIKE = 0.05;

function isAlike(a: Sheet, b: Sheet): boolean {
  const [one, two] = [extentOf(a.edges).flat(), extentOf(b.edges).flat()];
  return one.every((at, i) => Math.abs(at - two[i]!) <= ALIKE);
}
