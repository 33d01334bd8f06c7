/**
 * The wrap template of one end as it is drawn on paper, in millimetres from its lower left corner: what has to be known above it,
 * then the unrolled surface. It is cut out along its edges, wound round the tube printed side out with the lower edge at the blank's sawn end and
 * the 0 line on the inside line or the scribed line, taped, and scribed along the cut line, or cut along that first. Hatched is what comes off.
 */
import { capital } from '../../core/words/lists.ts';
import { errorsOf, faultInWords } from '../../core/checks/faults.ts';
import type { Derived } from '../../core/derive.ts';
import { toDegrees, toRadians } from '../../core/geometry/angle.ts';
import { ROUNDING } from '../../core/geometry/tolerance.ts';
import type { LengthUnit } from '../../core/units/length.ts';
import { throatInWords } from '../../core/words/cope-mark.ts';
import { landingOf } from '../../core/cope/landing.ts';
import type { SurfacePlace } from '../../core/cope/cut-pieces.ts';
import { inSpace, type Wrap } from '../../core/cope/wrap.ts';
import { revisionOf } from '../../core/solve/revision.ts';
import { revisionInWords } from '../../core/words/revision.ts';
import { shrunk, wrapped } from '../../drawing/fit.ts';
import type { Lettering } from '../../drawing/lettering.ts';
import { moved } from '../../drawing/move.ts';
import { words } from '../../drawing/strokes.ts';
import type { Mark } from '../../drawing/types.ts';
import { degreeLabel, READ, wrapSurface } from './wrap-surface.ts';
import {
  anglesInWords,
  endMark,
  fitInWords,
  landingInWords,
  lowerEdgeInWords,
  sawnEnd,
  upperEdgeInWords,
  zeroInWords,
  type EndOf,
} from '../shared/wrap-words.ts';

export interface Template {
  readonly width: number;
  readonly height: number;
  readonly marks: readonly Mark[];
}

const LEADING = 4;
/** Room under the lower edge for its words. */
const UNDER = 5;

/** `space` is how wide the words above it may run where it stands alone in its row, mm. */
export function wrapTemplate(
  frame: Derived,
  face: Lettering,
  end: EndOf,
  wrap: Wrap,
  unit: LengthUnit,
  space: number,
): Template {
  const alone = 2 * wrap.width > space;
  const above = captions(frame, face, end, wrap, unit, alone ? Math.max(space, wrap.width) : wrap.width);
  const tall = wrap.baseline - wrap.lower;
  const under = words('template', 0, 1, `▲ ${lowerEdgeInWords(wrap, sawnEnd(frame, end), unit)}`, READ);
  return {
    width: wrap.width,
    height: UNDER + tall + above.height,
    marks: [under, ...moved(wrapSurface(frame, face, end, wrap), 0, UNDER), ...moved(above.marks, 0, UNDER + tall)],
  };
}

/** Lines from the template's upper edge up. */
function captions(frame: Derived, face: Lettering, end: EndOf, wrap: Wrap, unit: LengthUnit, space: number) {
  const errors = errorsOf(frame.findings, end.tube.id);
  const notes = [
    ...(errors.length > 0 ? [`! ${faultInWords(errors)}: see the checks.`] : []),
    capital(revisionInWords(revisionOf(frame.job, end.tube))),
    `${capital(fitInWords(frame, end))}. ${anglesInWords(frame, end).join(' ')}`,
    `${zeroInWords(end)}.`,
    ...openInWords(wrap),
    upperEdgeInWords(wrap, sawnEnd(frame, end), unit),
    ...[throatInWords(end.tube, end.which, wrap.throat.phi) ?? []].flat(),
    ...landings(frame, end, wrap, unit),
  ];
  const lines = notes.flatMap((text) => wrapped(face, text, space, READ));
  const title = shrunk(face, `${endMark(end)}  ${end.tube.name}`, space, 5, true);
  const height = 2 + LEADING * lines.length + 8;
  return {
    height,
    marks: [
      words('template', 0, height - 6, title.text, title.size, { bold: true }),
      ...lines.map((text, i) => words('template', 0, height - 8 - LEADING * (i + 0.75), text, READ)),
    ],
  };
}

function landings(frame: Derived, end: EndOf, wrap: Wrap, unit: LengthUnit): string[] {
  const { tube, which } = end;
  const placed = (name: string, place: SurfacePlace): string[] => {
    const landing = landingOf(frame, tube, which, inSpace(tube, which, place));
    return landing === null ? [] : [`${name} lands ${landingInWords(landing, unit)}.`];
  };
  const tips = wrap.tips.flatMap((tip) => placed(`Tip at ${wholeDegrees(tip.phi)}`, tip));
  return [...tips, ...placed(`Throat at ${wholeDegrees(wrap.throat.phi)}`, wrap.throat)];
}

const wholeDegrees = (phi: number): string => `${degreeLabel(toDegrees(phi))}°`;

/** What is not cut, named by the degrees between the pieces of the line; one stretch where it runs on across the seam. */
function openInWords({ pieces, closed, left }: Wrap): string[] {
  if (closed) return [];
  const between = pieces.slice(1).map((piece, i) => [pieces[i]!.at(-1)!.phi, piece[0]!.phi] as const);
  const [first, last] = [pieces[0]![0]!.phi, pieces.at(-1)!.at(-1)!.phi];
  const overSeam = [last, first + 2 * Math.PI] as const;
  const named = [...between, overSeam]
    .filter(([from, to]) => to - from > ROUNDING)
    .map((gap) => {
      const [from, to] = gap.map(wholeDegrees);
      const crosses = gap === overSeam && first > left + SEAM && last < left + 2 * Math.PI - SEAM;
      return `${from === to ? `at ${from}` : `from ${from} to ${to}`}${crosses ? ' across the seam' : ''}`;
    });
  return [`OPEN: nothing is cut ${named.join(' and ')}. Check on the tube before you cut.`];
}

/** A line that ends no farther than this from an edge of the sheet ends at the seam, radians. */
const SEAM = toRadians(0.5);
