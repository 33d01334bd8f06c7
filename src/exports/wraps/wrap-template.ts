/**
 * The wrap template of one end as it is drawn on paper, in millimetres from its lower left corner: the unrolled surface, and beside it,
 * or above it where it is as wide as the page, what has to be known of it. It is cut out along its edges, wound round the tube printed side out with
 * the lower edge at the blank's sawn end and the 0 line on the inside line or the scribed line, taped, and scribed along the cut line,
 * or cut along that first. Hatched is what comes off. What must not be lost with the snippets stands on the surface itself.
 */
import { errorsOf, faultInWords } from '../../core/checks/faults.ts';
import type { Derived } from '../../core/derive.ts';
import { toRadians } from '../../core/geometry/angle.ts';
import { ROUNDING } from '../../core/geometry/tolerance.ts';
import type { LengthUnit } from '../../core/units/length.ts';
import { throatInWords } from '../../core/words/cope-mark.ts';
import type { Wrap } from '../../core/cope/wrap.ts';
import { wrapped } from '../../drawing/fit.ts';
import type { Lettering } from '../../drawing/lettering.ts';
import { moved } from '../../drawing/move.ts';
import { words } from '../../drawing/strokes.ts';
import type { Mark } from '../../drawing/types.ts';
import { READ, WARN, wholeDegrees, wrapSurface } from './wrap-surface.ts';
import {
  anglesInWords,
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
const UNDER = 4.5;
/** Between the surface and the words beside it, and the narrowest column that they are set in. */
const ASIDE = 4;
const LEAST_COLUMN = 30;

/** Words beside it or above it, whichever takes less of a page `space` mm wide on which such templates stand `gap` apart. */
export function wrapTemplate(
  frame: Derived,
  face: Lettering,
  end: EndOf,
  wrap: Wrap,
  unit: LengthUnit,
  space: number,
  gap: number,
): Template {
  const tall = wrap.baseline - wrap.lower;
  const under = words('template', 0, 1, `▲ ${lowerEdgeInWords(wrap, sawnEnd(frame, end), unit)}`, WARN);
  const surface = [under, ...moved(wrapSurface(frame, face, end, wrap), 0, UNDER)];
  const notes = notesOf(frame, end, wrap, unit);
  const alone = 2 * wrap.width + gap > space;
  const over = captions(face, notes, alone ? Math.max(space, wrap.width) : wrap.width);
  const above: Template = {
    width: wrap.width,
    height: UNDER + tall + 2 + over.height,
    marks: [...surface, ...moved(over.marks, 0, UNDER + tall + 2)],
  };
  const column = space - wrap.width - ASIDE;
  if (column < LEAST_COLUMN) return above;
  const along = captions(face, notes, Math.min(column, WIDEST_COLUMN));
  const height = Math.max(UNDER + tall, along.height);
  const beside: Template = {
    width: wrap.width + ASIDE + Math.min(column, WIDEST_COLUMN),
    height,
    marks: [
      ...moved(surface, 0, height - UNDER - tall),
      ...moved(along.marks, wrap.width + ASIDE, height - along.height),
    ],
  };
  const share = (template: Template): number =>
    template.height / Math.max(1, Math.floor((space + gap) / (template.width + gap)));
  return share(beside) <= share(above) ? beside : above;
}

/** mm. Longer lines are not read more easily. */
const WIDEST_COLUMN = 60;

interface Note {
  readonly text: string;
  readonly warns?: boolean;
}

/** The first at the top of them, the last at 0. */
function captions(face: Lettering, notes: readonly Note[], space: number) {
  const lines = notes.flatMap(({ text, warns = false }) => {
    const size = warns ? WARN : READ;
    return wrapped(face, text, space, size, warns).map((each) => ({ text: each, size, bold: warns }));
  });
  const height = LEADING * lines.length;
  return {
    height,
    marks: lines.map(({ text, size, bold }, i) =>
      words('template', 0, height - LEADING * (i + 0.75), text, size, { bold }),
    ),
  };
}

function notesOf(frame: Derived, end: EndOf, wrap: Wrap, unit: LengthUnit): Note[] {
  const errors = errorsOf(frame.findings, end.tube.id);
  const angles = anglesInWords(frame, end);
  return [
    ...(errors.length > 0 ? [{ text: `! ${faultInWords(errors)}: see the checks.`, warns: true }] : []),
    ...openInWords(wrap).map((text) => ({ text, warns: true })),
    ...(angles.length > 0 ? [{ text: angles.join(' ') }] : []),
    { text: `${zeroInWords(end)}.` },
    { text: upperEdgeInWords(wrap, sawnEnd(frame, end), unit) },
    ...[throatInWords(end.tube, end.which, wrap.throat.phi) ?? []].flat().map((text) => ({ text })),
  ];
}

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
