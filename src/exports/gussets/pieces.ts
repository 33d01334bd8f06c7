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
}

/** In the order of the job; those that cannot be made are left out. */
export const piecesOf = (derived: Derived): readonly GussetPiece[] =>
  derived.job.gussets.flatMap((gusset, i) => {
    const sheets = gussetsOf(derived).flatMap((set) => (set.gusset === gusset ? sheetOf(set) : []));
    const [own, image] = sheets;
    if (own === undefined) return [];
    const piece = (sheet: Sheet, count: number, mark: string): GussetPiece => ({
      gusset,
      title: `${mark} ${gusset.name}`,
      count,
      sheet,
    });
    const mark = `G${i + 1}`;
    if (image === undefined || isAlike(own, image)) return [piece(own, sheets.length, mark)];
    return [piece(own, 1, mark), piece(image, 1, `${mark}'`)];
  });

const sheetOf = ({ made }: SetGusset): readonly Sheet[] => (isMade(made) ? [made.sheet] : []);

/** mm. A sheet is cut no finer; where tubes stand as they were built, the two sides of the car may differ by more. */
const ALIKE = 0.05;

function isAlike(a: Sheet, b: Sheet): boolean {
  const [one, two] = [extentOf(a.edges).flat(), extentOf(b.edges).flat()];
  return one.every((at, i) => Math.abs(at - two[i]!) <= ALIKE);
}
