/**
 * The wrap template of one end as it is drawn on paper, in millimetres from its lower left corner: what has to be known above it,
 * then the unrolled surface. It is cut out along its edges, wound round the tube with the lower edge at the blank's sawn end and
 * the 0 line on the line of the tube, taped, and scribed along the cut line, or cut along that first. Hatched is what comes off.
 */
import { errorsOf, faultInWords } from '../core/checks/faults.ts';
import type { Derived } from '../core/derive.ts';
import { toRadians } from '../core/geometry/angle.ts';
import type { LengthUnit } from '../core/job/types.ts';
import { landingOf } from '../core/shop/landing.ts';
import { cutAt, inSpace, unroll, type Wrap } from '../core/shop/wrap.ts';
import type { Lettering } from './drawing/lettering.ts';
import { shrunk, wrapped } from './drawing/fit.ts';
import { hatched } from './drawing/hatch.ts';
import { moved } from './drawing/move.ts';
import { DASHED, FAINT, FINE, FIRM, HAIR, line, rectangle, shape, words } from './drawing/strokes.ts';
import type { Mark, Place2 } from './drawing/types.ts';
import {
  anglesInWords,
  endMark,
  fitInWords,
  landingInWords,
  lowerEdgeInWords,
  numbered,
  upperEdgeInWords,
  zeroInWords,
  zeroLabel,
  type EndOf,
} from './wrap-words.ts';

export interface Template {
  readonly width: number;
  readonly height: number;
  readonly marks: readonly Mark[];
}

/** Letter bodies, mm: what is read at arm's length, and what only stands beside its line. */
const READ = 3.2;
const BESIDE = 2.6;
const LEADING = 4;
/** Room under the lower edge for its words. */
const UNDER = 5;

/** `room` is how wide the words above it may run where it stands alone in its row, mm. */
export function wrapTemplate(
  frame: Derived,
  face: Lettering,
  end: EndOf,
  wrap: Wrap,
  unit: LengthUnit,
  room: number,
): Template {
  const alone = 2 * wrap.width > room;
  const above = captions(frame, face, end, wrap, unit, alone ? Math.max(room, wrap.width) : wrap.width);
  const tall = wrap.baseline - wrap.lower;
  const surface = [
    ...scrap(wrap),
    ...edges(wrap, tall),
    ...degrees(wrap, tall),
    ...tubeLines(face, end, wrap, tall),
    ...names(frame, face, end, wrap, tall),
  ];
  const under = words('template', 0, 1, `▲ ${lowerEdgeInWords(wrap, unit)}`, READ);
  return {
    width: wrap.width,
    height: UNDER + tall + above.height,
    marks: [under, ...moved(surface, 0, UNDER), ...moved(above.marks, 0, UNDER + tall)],
  };
}

/** Lines from the template's upper edge up. */
function captions(frame: Derived, face: Lettering, end: EndOf, wrap: Wrap, unit: LengthUnit, room: number) {
  const errors = errorsOf(frame.findings, end.tube.id);
  const told = [
    ...(errors.length > 0 ? [`! ${faultInWords(errors)}: see the checks.`] : []),
    `${capital(fitInWords(frame, end))}. ${anglesInWords(frame, end).join(' ')}`,
    `${zeroInWords(end)}.`,
    ...openInWords(wrap),
    upperEdgeInWords(wrap, unit),
    ...landings(frame, end, wrap, unit),
  ];
  const lines = told.flatMap((text) => wrapped(face, text, room, READ));
  const title = shrunk(face, `${endMark(end)}  ${end.tube.name}`, room, 5, true);
  const height = 2 + LEADING * lines.length + 8;
  return {
    height,
    marks: [
      words('template', 0, height - 6, title.text, title.size, { bold: true }),
      ...lines.map((text, i) => words('template', 0, height - 8 - LEADING * (i + 0.75), text, READ)),
    ],
  };
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

function landings(frame: Derived, end: EndOf, wrap: Wrap, unit: LengthUnit): string[] {
  const { tube, which } = end;
  const told = (name: string, place: (typeof wrap.tips)[number]): string[] => {
    const landing = landingOf(frame, tube, which, inSpace(tube, which, place));
    return landing === null ? [] : [`${name} lands ${landingInWords(landing, unit)}.`];
  };
  const tips = wrap.tips.flatMap((tip) => told(`Tip at ${wholeDegrees(tip.phi)}`, tip));
  return [...tips, ...told(`Throat at ${wholeDegrees(wrap.throat.phi)}`, wrap.throat)];
}

const wholeDegrees = (phi: number): string => `${String(Math.round((phi * 180) / Math.PI)).replace('-', '−')}°`;

/** What is not cut, told by the degrees between the pieces of the line. */
function openInWords({ pieces, closed, left }: Wrap): string[] {
  if (closed) return [];
  const ends = pieces.flatMap((piece) => [piece[0]!.phi, piece.at(-1)!.phi]);
  const all = [left, ...ends, left + 2 * Math.PI];
  const gaps = Array.from({ length: all.length / 2 }, (_, i) => [all[2 * i]!, all[2 * i + 1]!] as const);
  const told = gaps
    .filter(([from, to]) => to - from > toRadians(0.5))
    .map(([from, to]) => `from ${wholeDegrees(from)} to ${wholeDegrees(to)}`);
  return [`OPEN: nothing is cut ${told.join(' and ')}. Check on the tube before you cut.`];
}

/** Hatched between the lower edge and the cut line; said in words where it is deep enough. */
function scrap(wrap: Wrap): Mark[] {
  const pieces = wrap.pieces.map((piece) => piece.map((place) => unroll(wrap, place)));
  const label = placeForLabel(wrap, pieces);
  return [
    ...pieces.flatMap((piece) => hatched(piece, 3).map((places) => line('template', places, FAINT))),
    ...(label === null
      ? []
      : [
          shape('template', rectangle(label.x - 10, label.y - 1, 20, 4.5), null, 1),
          words('template', label.x, label.y, 'cut away', READ, { anchor: 'middle' }),
        ]),
  ];
}

/** As near under the throat as it stands clear of the 0 line and of the cut line; null where there is no such place. */
function placeForLabel(wrap: Wrap, pieces: readonly (readonly Place2[])[]): Place2 | null {
  const deep = unroll(wrap, wrap.throat);
  const zero = unroll(wrap, { phi: 0, s: 0 }).x;
  for (const aside of [0, 13, -13, 26, -26, 40, -40]) {
    const x = deep.x + aside;
    const y = Math.min(heightAt(pieces, x - 11), heightAt(pieces, x), heightAt(pieces, x + 11)) / 2 - 1.5;
    if (Math.abs(x - zero) > 11 && x > 12 && x < wrap.width - 12 && y > 2) return { x, y };
  }
  return null;
}

function heightAt(pieces: readonly (readonly Place2[])[], x: number): number {
  for (const piece of pieces) {
    const next = piece.findIndex((place) => place.x >= x);
    if (next > 0) return Math.min(piece[next - 1]!.y, piece[next]!.y);
  }
  return 0;
}

function edges(wrap: Wrap, tall: number): Mark[] {
  const seam = (x: number) => words('template', x, tall - 14, 'seam', BESIDE, { anchor: 'middle', turn: Math.PI / 2 });
  return [
    shape('template', rectangle(0, 0, wrap.width, tall), FINE),
    ...wrap.pieces.map((piece) =>
      line(
        'template',
        piece.map((place) => unroll(wrap, place)),
        FIRM,
      ),
    ),
    seam(3),
    seam(wrap.width - 1.2),
  ];
}

/** Ticks along the upper edge: every 5 degrees, longer at 10, with figures at 30, or on a thin tube at 60. */
function degrees(wrap: Wrap, tall: number): Mark[] {
  const first = Math.round((wrap.left * 180) / Math.PI);
  const apart = toRadians(30) * wrap.radius < 8.5 ? 60 : 30;
  return Array.from({ length: 73 }, (_, i) => first + 5 * i).flatMap((degree): Mark[] => {
    const { x } = unroll(wrap, { phi: toRadians(degree), s: 0 });
    const [long, figured] = [degree % 10 === 0, degree % apart === 0];
    const tick = line(
      'template',
      [
        { x, y: tall },
        { x, y: tall - (figured ? 3.5 : long ? 2.2 : 1.2) },
      ],
      HAIR,
    );
    const edge = degree === first || degree === first + 360;
    if (!figured || edge) return [tick];
    const folded = degree < -180 ? degree + 360 : degree > 180 ? degree - 360 : degree;
    const figure = String(folded).replace('-', '−');
    return [tick, words('template', x, tall - 6, figure, BESIDE, { anchor: 'middle' })];
  });
}

/** Lines along and round the tube: the one that degrees count from, its opposite and the quarters, the node, tips and throat. */
function tubeLines(face: Lettering, end: EndOf, wrap: Wrap, tall: number): Mark[] {
  const zero = unroll(wrap, { phi: 0, s: 0 });
  const quarters = [-270, -180, -90, 90, 180, 270].map((degree) => toRadians(degree));
  const inside = quarters.filter((phi) => phi > wrap.left + 0.01 && phi < wrap.left + 2 * Math.PI - 0.01);
  const named = (place: (typeof wrap.tips)[number], name: string, above: number): Mark[] => {
    const { x, y } = unroll(wrap, place);
    const beside = Math.min(Math.max(x, 6), wrap.width - 6);
    return [
      line(
        'template',
        [
          { x, y },
          { x, y: y + above },
        ],
        FINE,
      ),
      words('template', beside, y + above + 0.8, name, BESIDE, { anchor: 'middle' }),
    ];
  };
  const nodeSeen = zero.y > 2 && zero.y < tall - 8;
  // On the side where no tip is named.
  const nodeLeft = wrap.tips.some((tip) => unroll(wrap, tip).x > wrap.width - 16);
  const label = zeroLabel(end);
  const fromZero = zero.x + 1.2 + face.width(label, BESIDE, true) < wrap.width - 5;
  return [
    line(
      'template',
      [
        { x: zero.x, y: 0 },
        { x: zero.x, y: tall - 7 },
      ],
      FINE,
    ),
    words('template', zero.x + (fromZero ? 1.2 : -1.2), tall - 10.5, label, BESIDE, {
      bold: true,
      anchor: fromZero ? 'start' : 'end',
    }),
    ...inside.map((phi) => {
      const { x } = unroll(wrap, { phi, s: 0 });
      const foot = (cutAt(wrap, phi) ?? wrap.lower) - wrap.lower;
      return line(
        'template',
        [
          { x, y: foot },
          { x, y: Math.max(foot, tall - 24) },
        ],
        { ...FAINT, dash: [2, 2] },
      );
    }),
    ...(nodeSeen
      ? [
          line(
            'template',
            [
              { x: 0, y: zero.y },
              { x: wrap.width, y: zero.y },
            ],
            DASHED,
          ),
          words('template', nodeLeft ? 2 : wrap.width - 2, zero.y + 0.8, 'node', BESIDE, {
            anchor: nodeLeft ? 'start' : 'end',
          }),
        ]
      : []),
    ...wrap.tips.flatMap((tip) => named(tip, 'tip', 6)),
    ...(Math.abs(wrap.throat.phi) < 0.1 ? [] : named(wrap.throat, 'throat', 2)),
  ];
}

/** On the template itself, so that it is known after it is cut out: which end, of which tube, to which tube. */
function names(frame: Derived, face: Lettering, end: EndOf, wrap: Wrap, tall: number): Mark[] {
  const zero = unroll(wrap, { phi: 0, s: 0 }).x;
  const [from, to] = zero >= wrap.width / 2 - 1e-9 ? [0, zero] : [zero, wrap.width];
  const [left, room] = [from + 6, to - from - 8];
  const mark = endMark(end);
  const beside = face.width(mark, 7, true) + 3;
  const told = [
    shrunk(face, numbered(end.tube), room - beside, READ, false, 2.4),
    ...wrapped(face, fitInWords(frame, end), room - beside, READ, false, 3).map((text) => ({ text, size: READ })),
  ];
  return [
    words('template', left, tall - 17.5, mark, 7, { bold: true }),
    ...told.map(({ text, size }, i) => words('template', left + beside, tall - 14 - 3.8 * i, text, size)),
  ];
}
