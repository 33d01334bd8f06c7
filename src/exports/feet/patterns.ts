/**
 * The flat pieces of all feet for a machine that cuts sheet: feet.dxf, and feet/*.svg, one a piece. At full size. Files are named by the foot's
 * place in the job and by the piece, never by what somebody typed.
 */
import type { Derived } from '../../core/derive.ts';
import { WHO_DECIDES } from '../../core/words/cautions.ts';
import { bendInWords } from '../../core/words/feet.ts';
import type { Going } from '../../drawing/going.ts';
import { svgText } from '../../drawing/svg.ts';
import type { ExportFile } from '../shared/files.ts';
import { laidOut } from '../shared/laid-out.ts';
import { footPattern } from './pattern.ts';
import { piecesOf } from './pieces.ts';

/** What a job says that has no foot with a tube on it. */
export const NO_FEET = 'No end of this job stands on a foot.';

/** One drawing of every piece, once: how many are to be cut stands on it. */
export async function feetDxf(derived: Derived, going: Going): Promise<ExportFile> {
  await going(0, 1);
  const sheets = piecesOf(derived).map(footPattern);
  return laidOut('feet.dxf', sheets, [...(sheets.length === 0 ? [NO_FEET] : []), WHO_DECIDES]);
}

/** feet/2-long-wall.svg: the piece of the job's second foot. */
export async function feetSvg(derived: Derived, going: Going): Promise<readonly ExportFile[]> {
  await going(0, 1);
  return piecesOf(derived).map((piece) => {
    const about = [
      `Flat pattern of ${piece.title}, seen from the tube's side, full size.`,
      piece.count,
      bendInWords(piece.foot, derived.job.lengthUnit),
      WHO_DECIDES,
    ];
    return {
      fileName: `feet/${piece.mark.slice(1)}-${piece.blank.part}.svg`,
      bytes: new TextEncoder().encode(svgText(footPattern(piece), about.filter((each) => each !== null).join(' '))),
    };
  });
}
