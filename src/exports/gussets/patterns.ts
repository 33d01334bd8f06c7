/** gussets.dxf: every gusset's sheet at full size, bent ones unfolded, for a machine that cuts sheet. How many are to be cut stands on each. */
import type { Derived } from '../../core/derive.ts';
import { extentOf } from '../../core/gusset/edges.ts';
import { gussetsOf, isMade } from '../../core/gusset/gussets.ts';
import { tubeName } from '../../core/solve/names.ts';
import { WHO_DECIDES } from '../../core/words/cautions.ts';
import { edgesInWords, foldInWords, gussetsCut, whyNoGusset } from '../../core/words/gussets.ts';
import { wrapped } from '../../drawing/fit.ts';
import type { Going } from '../../drawing/going.ts';
import { moved } from '../../drawing/move.ts';
import { unknownFace } from '../../drawing/unknown-face.ts';
import { words } from '../../drawing/strokes.ts';
import type { Sheet } from '../../drawing/types.ts';
import type { ExportFile } from '../shared/files.ts';
import { laidOut } from '../shared/laid-out.ts';
import { sheetMarks } from './pattern.ts';
import { piecesOf, type GussetPiece } from './pieces.ts';

/** mm: of the letters, and of a line of them. */
const SMALL = 2.8;
const LEADING = 1.5 * SMALL;
/** A narrow piece has its words beside it all the same. */
const LEAST_WIDE = 120;

const NO_GUSSETS = 'No gusset of this job can be cut.';

export async function gussetsDxf(derived: Derived, going: Going): Promise<ExportFile> {
  await going(0, 1);
  const sheets = piecesOf(derived).map((piece) => patternOf(piece, derived));
  const notes = [...notDrawn(derived), ...(sheets.length === 0 ? [NO_GUSSETS] : []), WHO_DECIDES];
  return laidOut('gussets.dxf', sheets, notes);
}

/** Which are not here, and why. */
const notDrawn = (derived: Derived): readonly string[] =>
  gussetsOf(derived).flatMap(({ gusset, isImage, made }) => {
    if (isMade(made)) return [];
    const why = whyNoGusset(made, derived.job.lengthUnit, (bar) => tubeName(derived, bar));
    return [`Not here: ${isImage ? 'the mirror image of ' : ''}${gusset.name}: ${why}`];
  });

/** The piece with its words under it, as a sheet that just holds both. */
function patternOf({ gusset, title, count, sheet, ways }: GussetPiece, derived: Derived): Sheet {
  const { lengthUnit } = derived.job;
  const { edges, bends } = sheet;
  const [[left, right], [bottom, top]] = extentOf(edges);
  const width = Math.max(right - left, LEAST_WIDE);
  const said = [
    title,
    gussetsCut(count, gusset, lengthUnit),
    edgesInWords(gusset, ways, (bar) => tubeName(derived, bar)),
    foldInWords(gusset, bends, lengthUnit),
  ]
    .filter((text) => text !== null)
    .flatMap((text) => wrapped(unknownFace, text, width, SMALL, false, 6));
  const under = LEADING * said.length;
  return {
    name: title,
    width,
    height: top - bottom + under,
    marks: [
      ...moved(sheetMarks(sheet), -left, under - bottom),
      ...said.map((text, i) => words('TEXT', 0, under - LEADING * (i + 1) + 1, text, SMALL)),
    ],
  };
}
