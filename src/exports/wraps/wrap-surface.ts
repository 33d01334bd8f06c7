/**
 * The unrolled surface of a wrap template as it stands on paper, in millimetres from its lower left corner: its outline, the cut line,
 * what comes off hatched, the scale of degrees, the lines along the tube, and what each of these is called. No words stand on
 * others.
 */
import type { Derived } from '../../core/derive.ts';
import { toDegrees, toRadians, type Radians } from '../../core/geometry/angle.ts';
import type { SurfacePlace } from '../../core/cope/cut-pieces.ts';
import { revisionOf } from '../../core/solve/revision.ts';
import { revisionInWords } from '../../core/words/revision.ts';
import { cutAt, unroll, widerSide, type Wrap } from '../../core/cope/wrap.ts';
import { boxOf, clearOf, isClear } from '../../drawing/clear.ts';
import { clipped } from '../../drawing/clip.ts';
import { shrunk, wrapped, type Fitted } from '../../drawing/fit.ts';
import { hatched } from '../../drawing/hatch.ts';
import type { Lettering } from '../../drawing/lettering.ts';
import { DASHED, FAINT, FINE, FIRM, HAIR, line, rectangle, shape, words } from '../../drawing/strokes.ts';
import type { Line, Mark, Place2, Words } from '../../drawing/types.ts';
import { endMark, fitInWords, zeroLabel, type EndOf } from '../shared/wrap-words.ts';

/** Letter bodies, mm: what keeps one from a mistake (11 points), what is read at arm's length, and what only stands beside its line. */
export const WARN = 3.9;
export const READ = 3.2;
const BESIDE = 2.6;

export function wrapSurface(frame: Derived, face: Lettering, end: EndOf, wrap: Wrap): Mark[] {
  const tall = wrap.baseline - wrap.lower;
  const fixed = [
    ...scrap(wrap, tall),
    ...edges(wrap, tall),
    ...degrees(wrap, tall),
    ...tubeLines(face, end, wrap, tall),
    ...names(frame, face, end, wrap, tall),
    ...nodeLine(wrap, tall),
  ];
  const named = extremes(face, wrap, fixed);
  return [...fixed, ...named, ...nodeName(face, wrap, tall, [...fixed, ...named])];
}

/** As the scale along the upper edge has it: -179 to 180. */
export const degreeLabel = (degrees: number): string => {
  const turned = ((Math.round(degrees) % 360) + 360) % 360;
  return String(turned > 180 ? turned - 360 : turned).replace('-', '−');
};

export const wholeDegrees = (phi: Radians): string => `${degreeLabel(toDegrees(phi))}°`;

/** Hatched between the lower edge and the cut line; said in words where it is deep enough. */
function scrap(wrap: Wrap, tall: number): Mark[] {
  const pieces = wrap.pieces.map((piece) => piece.map((place) => unroll(wrap, place)));
  const label = placeForLabel(wrap, pieces, nodeHeight(wrap, tall));
  return [
    ...pieces.flatMap((piece) => hatched(piece, 3).map((places) => line('template', places, FAINT))),
    ...(label === null
      ? []
      : [
          shape('template', rectangle(label.x - 10, label.y - 1, 20, 4.9), null, 1),
          words('template', label.x, label.y, CUT_AWAY, WARN, { anchor: 'middle' }),
        ]),
  ];
}

const CUT_AWAY = 'cut away';

/** As near under the throat as it stands clear of the 0 line, of the node's line and of the cut line; null where there is no such place. */
function placeForLabel(wrap: Wrap, pieces: readonly (readonly Place2[])[], node: number | null): Place2 | null {
  const throat = unroll(wrap, wrap.throat);
  const zero = unroll(wrap, { phi: 0, s: 0 }).x;
  for (const aside of [0, 13, -13, 26, -26, 40, -40]) {
    const x = throat.x + aside;
    const deep = Math.min(heightAt(pieces, x - 11), heightAt(pieces, x), heightAt(pieces, x + 11));
    const y = besideNode(deep / 2 - 1.5, node, deep);
    if (Math.abs(x - zero) > 11 && x > 12 && x < wrap.width - 12 && y > 2) return { x, y };
  }
  return null;
}

/** Letters that would stand on the node's line stand over it where they have room under the cut line, else under it. */
function besideNode(y: number, node: number | null, cut: number): number {
  if (node === null || node < y - 1.5 || node > y + 4) return y;
  const over = node + 1.5;
  return over + 4.5 < cut ? over : node - 4.5;
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
    return [tick, words('template', x, tall - 6, degreeLabel(degree), BESIDE, { anchor: 'middle' })];
  });
}

/** Lines along the tube: the one that degrees count from, its opposite and the quarters. */
function tubeLines(face: Lettering, end: EndOf, wrap: Wrap, tall: number): Mark[] {
  const zero = unroll(wrap, { phi: 0, s: 0 });
  const quarters = [-270, -180, -90, 90, 180, 270].map((degree) => toRadians(degree));
  const inside = quarters.filter((phi) => phi > wrap.left + 0.01 && phi < wrap.left + 2 * Math.PI - 0.01);
  const { fromZero, label } = zeroWords(face, end, wrap);
  return [
    line(
      'template',
      [
        { x: zero.x, y: 0 },
        { x: zero.x, y: tall - 7 },
      ],
      FINE,
    ),
    words('template', zero.x + (fromZero ? 1.2 : -1.2), tall - 10.8, label.text, label.size, {
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
  ];
}

/** What the line that degrees count from is called, on the side of it that has room. */
function zeroWords(face: Lettering, end: EndOf, wrap: Wrap): { readonly fromZero: boolean; readonly label: Fitted } {
  const zero = unroll(wrap, { phi: 0, s: 0 }).x;
  const [before, beyond] = [zero - 7, wrap.width - 6 - zero];
  const fromZero = beyond >= before || face.width(zeroLabel(end), WARN, true) < beyond;
  return { fromZero, label: shrunk(face, zeroLabel(end), fromZero ? beyond : before, WARN, true, BESIDE) };
}

/** The line round the tube through the node. */
function nodeLine(wrap: Wrap, tall: number): Mark[] {
  const y = nodeHeight(wrap, tall);
  if (y === null) return [];
  const places = [
    { x: 0, y },
    { x: wrap.width, y },
  ];
  return [line('template', places, DASHED)];
}

/** Of that line over the lower edge; null where it would lie on an edge, or off the template. */
function nodeHeight(wrap: Wrap, tall: number): number | null {
  const { y } = unroll(wrap, { phi: 0, s: 0 });
  return y <= 2 || y >= tall - 8 ? null : y;
}

/** What it is, at an end of it. */
function nodeName(face: Lettering, wrap: Wrap, tall: number, fixed: readonly Mark[]): Mark[] {
  const y = nodeHeight(wrap, tall);
  if (y === null) return [];
  const places = [2, 5, 12].flatMap((inwards) =>
    [y + 0.8, y - 2.6].flatMap((up) => [
      words('template', wrap.width - inwards, up, 'node', BESIDE, { anchor: 'end' }),
      words('template', inwards, up, 'node', BESIDE),
    ]),
  );
  return [
    clearOf(
      places,
      fixed.filter((mark) => mark.kind === 'words'),
      face,
    ),
  ];
}

/** Tips and throat: a stroke up from the cut line, and at its head or beside it, clear of what stands there, its name. */
function extremes(face: Lettering, wrap: Wrap, fixed: readonly Mark[]): Mark[] {
  const set = fixed.filter((mark) => mark.kind === 'words');
  const lines = fixed.filter((mark): mark is Line => mark.kind === 'line' && mark.pen !== null);
  // Clear of lines too where there is such a place.
  const unlined = (places: readonly Words[]): Words => {
    const label =
      places.find((mark) => isClear(mark, set, face) && !isCrossed(mark, lines, face)) ?? clearOf(places, set, face);
    set.push(label);
    return label;
  };
  const named = (place: SurfacePlace, name: string, above: number): Mark[] => {
    const { x, y } = unroll(wrap, place);
    if (x < AT_SEAM || x > wrap.width - AT_SEAM) return atSeam(wrap, y, name, above, unlined);
    const most = wrap.width - 6;
    const at = (aside: number, up: number) =>
      words('template', Math.min(Math.max(x + aside, 6), most), y + up, name, BESIDE, { anchor: 'middle' });
    const beside = 1 + face.width(name, BESIDE, false) / 2;
    const sides = [1, 2, 3, 4, 5].flatMap((times) => [times * beside, -times * beside]);
    const heights = [above + 0.8, above / 2, above + 3, -3];
    const places = heights.flatMap((up) => (up > above ? [0, ...sides] : sides).map((aside) => at(aside, up)));
    const stroke = line(
      'template',
      [
        { x, y },
        { x, y: y + above },
      ],
      FINE,
    );
    lines.push(stroke);
    return [stroke, unlined(places)];
  };
  return [
    ...wrap.tips.flatMap((tip) => named(tip, 'tip', 6)),
    ...(Math.abs(wrap.throat.phi) < 0.1 ? [] : named(wrap.throat, 'throat', 2)),
  ];
}

/** Whether a line runs through level words. */
function isCrossed(mark: Words, lines: readonly Line[], face: Lettering): boolean {
  const [low, , high] = boxOf(mark, face) as [Place2, Place2, Place2];
  return clipped(lines, { left: low.x, bottom: low.y, right: high.x, top: high.y }).length > 0;
}

/** A place at the seam belongs to both edges: at each a stroke that shows on it, and the name beside that. */
function atSeam(wrap: Wrap, y: number, name: string, above: number, put: (places: readonly Words[]) => Words): Mark[] {
  return ([1, -1] as const).flatMap((inwards): Mark[] => {
    const x = inwards === 1 ? 0 : wrap.width;
    const heights = [above / 2 - 1, above - 1, above + 2, above + 4, above + 6];
    const label = put(
      heights.map((up) =>
        words('template', x + 1.4 * inwards, y + up, name, BESIDE, { anchor: inwards === 1 ? 'start' : 'end' }),
      ),
    );
    const stroke = [
      { x, y },
      { x, y: y + above },
    ];
    return [line('template', stroke, { ...FIRM, width: 0.8 }), label];
  });
}

/** mm. A place this near to an edge is at the seam. */
const AT_SEAM = 0.3;

/** On the template itself, so that it is known after it is cut out: which end, of which tube, to which tube, of which revision, what comes off. */
function names(frame: Derived, face: Lettering, end: EndOf, wrap: Wrap, tall: number): Mark[] {
  const [from, to] = widerSide(wrap);
  // Clear of the word at either seam.
  const [left, space] = [from + 6, to - from - 11];
  const mark = endMark(end);
  const under = [revisionInWords(revisionOf(frame.job, end.tube)), `▼ ${CUT_AWAY}`];
  const aside = Math.max(face.width(mark, 7, true), ...under.map((text) => face.width(text, READ, false))) + 2.5;
  // The name has a row of its own where the 0 line's does not stand in it.
  const over = zeroWords(face, end, wrap).fromZero !== from > 0;
  const [across, top] = over ? [space, 11.2] : [space - aside, 15.4];
  const name = shrunk(face, end.tube.name, across, WARN, true, 2.6);
  const fit = fitInWords(frame, end);
  const most = over ? 3 : 2;
  const lines = (size: number): readonly string[] => wrapped(face, fit, space - aside, size);
  const size = [WARN, READ, BESIDE].find((each) => lines(each).length <= most) ?? BESIDE;
  const first = over ? 16 : top + size + 0.7;
  return [
    words('template', left, tall - 18.6, mark, 7, { bold: true }),
    ...under.map((text, i) => words('template', left, tall - 22.6 - 4 * i, text, READ)),
    words('template', over ? left : left + aside, tall - top, name.text, name.size, { bold: true }),
    ...wrapped(face, fit, space - aside, size, false, most).map((text, i) =>
      words('template', left + aside, tall - first - (size + 0.7) * i, text, size),
    ),
  ];
}
