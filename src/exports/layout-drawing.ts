/**
 * A flat tube at full size: what is drawn on a floor to bend and to check a hoop by. Centreline, both edges, the tangents with their
 * places along the blank, both ends as they are cut, and what a tape measures across it. Layers: CENTRELINE, EDGE, TANGENT, END
 * (END_BACK behind the tube), NODE, DIMENSION, TEXT.
 */
import { errorsOf, faultInWords } from '../core/checks/faults.ts';
import type { Finding } from '../core/checks/types.ts';
import { toDegrees } from '../core/geometry/angle.ts';
import { addScaled, cross, dot, scale } from '../core/geometry/vector.ts';
import type { LengthUnit } from '../core/job/types.ts';
import { sectionInWords } from '../core/job/sizes.ts';
import { extremesOf, type FlatArc, type FlatLine, type FlatPlace, type FlatTube } from '../core/shop/lay-flat.ts';
import { inSpace } from '../core/shop/wrap.ts';
import type { SolvedTube } from '../core/solve/types.ts';
import { formatAngle } from '../core/units/angle.ts';
import type { DxfLayer } from './drawing/dxf.ts';
import { moved } from './drawing/move.ts';
import { DASHED, FAINT, FINE, FIRM, HAIR, line, words } from './drawing/strokes.ts';
import type { Arc, Mark, Pen, Sheet } from './drawing/types.ts';
import { lengthInWords, numbered } from './wrap-words.ts';

export const LAYOUT_LAYERS: readonly DxfLayer[] = [
  { name: 'CENTRELINE', colour: 5 },
  { name: 'EDGE', colour: 7 },
  { name: 'TANGENT', colour: 1 },
  { name: 'END', colour: 7 },
  { name: 'END_BACK', colour: 8 },
  { name: 'NODE', colour: 6 },
  { name: 'DIMENSION', colour: 3 },
  { name: 'TEXT', colour: 3 },
];

/** Legible from a bench, mm. */
const SIZE = 6;
/** Round the tube, for dimensions and words. */
const BORDER = 60;

/** As a sheet that just holds it. */
export function layoutDrawing(tube: SolvedTube, flat: FlatTube, findings: readonly Finding[], unit: LengthUnit): Sheet {
  const ra = tube.section.outerDiameter / 2;
  const reached = flat.pieces
    .flatMap((piece) => reachOf(piece, ra))
    .concat(endCurves(tube, flat).flatMap(({ places }) => places));
  const box = {
    left: Math.min(...reached.map(({ x }) => x)),
    right: Math.max(...reached.map(({ x }) => x)),
    bottom: Math.min(...reached.map(({ y }) => y)),
    top: Math.max(...reached.map(({ y }) => y)),
  };
  const marks = [
    ...flat.pieces.map((piece) => drawn('CENTRELINE', piece, 0, HAIR, [0, 0])),
    ...edges(tube, flat, ra),
    ...endCurves(tube, flat).map(({ layer, places }) => line(layer, places, layer === 'END' ? FIRM : DASHED)),
    ...nodes(tube, flat, ra),
    ...tangents(tube, flat, ra, unit),
    ...dimensions(tube, flat, box, unit),
    ...title(tube, box, findings, unit),
  ];
  return {
    name: numbered(tube),
    width: box.right - box.left + 2 * BORDER,
    height: box.top - box.bottom + 2 * BORDER,
    marks: moved(marks, BORDER - box.left, BORDER - box.bottom),
  };
}

type Piece = FlatLine | FlatArc;

/** Of a line: unit vector along, and the one to its left. */
function sense({ from, to }: FlatLine): { along: FlatPlace; left: FlatPlace } {
  const long = Math.hypot(to.x - from.x, to.y - from.y);
  const along = { x: (to.x - from.x) / long, y: (to.y - from.y) / long };
  return { along, left: { x: -along.y, y: along.x } };
}

const shifted = (place: FlatPlace, along: FlatPlace, by: number): FlatPlace => ({
  x: place.x + by * along.x,
  y: place.y + by * along.y,
});

/** The piece at `aside` mm to its left, taken in at its two ends by `taken` mm along a line. */
function drawn(layer: string, piece: Piece, aside: number, pen: Pen, taken: readonly [number, number]): Mark {
  if (piece.kind === 'line') {
    const { along, left } = sense(piece);
    const from = shifted(shifted(piece.from, left, aside), along, taken[0]);
    const to = shifted(shifted(piece.to, left, aside), along, -taken[1]);
    return line(layer, [from, to], pen);
  }
  const { centre, low, high } = piece;
  const arc: Arc = { kind: 'arc', layer, centre, radius: radiusAside(piece, aside), from: low, to: high, pen };
  return arc;
}

const radiusAside = ({ radius, left }: FlatArc, aside: number): number => (left ? radius - aside : radius + aside);

function reachOf(piece: Piece, ra: number): FlatPlace[] {
  if (piece.kind === 'arc') return extremesOf(piece, piece.radius + ra);
  const { left } = sense(piece);
  return [piece.from, piece.to].flatMap((place) => [shifted(place, left, ra), shifted(place, left, -ra)]);
}

/** Both edges, each up to where the end's cut meets it: on a flat tube the lines at phi = 0 and 180 degrees. */
function edges(tube: SolvedTube, flat: FlatTube, ra: number): Mark[] {
  const trims = tube.ends.map(({ direction, reference, outer }, which) => {
    // Seen along the feed, left is where the plane's normal turned on from it points.
    const feed = which === 0 ? direction : scale(direction, -1);
    const referenceIsLeft = dot(reference, cross(flat.toEye, feed)) > 0;
    const at = (degree: number): number => (Number.isNaN(outer[degree]!) ? 0 : outer[degree]!);
    return referenceIsLeft ? ([at(0), at(180)] as const) : ([at(180), at(0)] as const);
  });
  const last = flat.pieces.length - 1;
  return ([1, -1] as const).flatMap((side) => {
    const which = side > 0 ? 0 : 1;
    return flat.pieces.map((piece, i) =>
      drawn('EDGE', piece, side * ra, FINE, [i === 0 ? trims[0]![which] : 0, i === last ? trims[1]![which] : 0]),
    );
  });
}

/** The ends' cut lines as one looks square upon the plane: in front of the tube and behind it. */
function endCurves(tube: SolvedTube, flat: FlatTube): { layer: string; places: FlatPlace[] }[] {
  return ([0, 1] as const).flatMap((which) => {
    const { outer, direction, reference } = tube.ends[which];
    const inFront = dot(cross(direction, reference), flat.toEye) > 0;
    return ([0, 180] as const).flatMap((from) => {
      const layer = inFront === (from === 0) ? 'END' : 'END_BACK';
      const degrees = Array.from({ length: 181 }, (_, i) => from + i);
      const reached = degrees.filter((degree) => !Number.isNaN(outer[degree % 360]!));
      if (reached.length < degrees.length) return [];
      const places = degrees.map((degree) =>
        flat.onPlane(inSpace(tube, which, { phi: (degree * Math.PI) / 180, s: outer[degree % 360]! })),
      );
      return [{ layer, places }];
    });
  });
}

/** A line square through each node, and its name. */
function nodes(tube: SolvedTube, flat: FlatTube, ra: number): Mark[] {
  return tube.ends.flatMap(({ position, reference, direction }, which): Mark[] => {
    const at = (aside: number) => flat.onPlane(addScaled(position, reference, aside));
    const label = flat.onPlane(addScaled(addScaled(position, reference, ra + 14), direction, 4));
    return [
      line('NODE', [at(-ra - 10), at(ra + 10)], DASHED),
      words('TEXT', label.x, label.y, `node ${which === 0 ? 'A' : 'B'}`, SIZE, { anchor: 'middle' }),
    ];
  });
}

/** Across the tube at both tangents of every bend, told along the tube from its sawn end A; and the bend itself, on its inside. */
function tangents(tube: SolvedTube, flat: FlatTube, ra: number, unit: LengthUnit): Mark[] {
  const [endA] = tube.ends;
  const fromNode = endA.allowance - (endA.tip ?? 0);
  const arcs = flat.pieces.filter((piece) => piece.kind === 'arc');
  return arcs.flatMap((arc, i): Mark[] => {
    const { centre, radius, low, high, left } = arc;
    const bend = tube.bends[i]!;
    const at = (angle: number, far: number) => ({
      x: centre.x + far * Math.cos(angle),
      y: centre.y + far * Math.sin(angle),
    });
    const tangent = (angle: number, text: string): Mark[] => {
      const label = at(angle, radius + ra + 14);
      const anchor = Math.cos(angle) > 0.3 ? 'start' : Math.cos(angle) < -0.3 ? 'end' : 'middle';
      return [
        line('TANGENT', [at(angle, radius - ra - 10), at(angle, radius + ra + 10)], FINE),
        words('TEXT', label.x, label.y - SIZE / 3, text, SIZE, { anchor }),
      ];
    };
    const middle = at((low + high) / 2, Math.max(0, radius - ra - 40));
    const told = `bend ${i + 1}: ${formatAngle(toDegrees(bend.angle), 1)}°, CLR ${lengthInWords(bend.radius, unit)}`;
    return [
      ...tangent(left ? low : high, `${i + 1} start ${lengthInWords(fromNode + bend.start, unit)}`),
      ...tangent(left ? high : low, `${i + 1} end ${lengthInWords(fromNode + bend.end, unit)}`),
      line('TANGENT', [at((low + high) / 2, radius - 6), at((low + high) / 2, radius + 6)], HAIR),
      words('TEXT', middle.x, middle.y, told, SIZE, { anchor: 'middle' }),
    ];
  });
}

interface Extents {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

/** Over all, outside to outside, and from node to node. */
function dimensions(tube: SolvedTube, flat: FlatTube, box: Extents, unit: LengthUnit): Mark[] {
  const { left, right, bottom, top } = box;
  const [a, b] = tube.ends.map(({ position }) => flat.onPlane(position)) as [FlatPlace, FlatPlace];
  const across = (from: number, to: number, y: number, text: string): Mark[] => [
    line(
      'DIMENSION',
      [
        { x: from, y },
        { x: to, y },
      ],
      HAIR,
    ),
    line(
      'DIMENSION',
      [
        { x: from, y: y - 4 },
        { x: from, y: y + 4 },
      ],
      FINE,
    ),
    line(
      'DIMENSION',
      [
        { x: to, y: y - 4 },
        { x: to, y: y + 4 },
      ],
      FINE,
    ),
    words('TEXT', (from + to) / 2, y + 2, text, SIZE, { anchor: 'middle' }),
  ];
  const x = left - 25;
  return [
    line('DIMENSION', [a, b], FAINT),
    ...across(a.x, b.x, bottom - 22, `node to node ${lengthInWords(b.x - a.x, unit)}`),
    ...across(left, right, bottom - 44, `over all ${lengthInWords(right - left, unit)}`),
    line(
      'DIMENSION',
      [
        { x, y: bottom },
        { x, y: top },
      ],
      HAIR,
    ),
    line(
      'DIMENSION',
      [
        { x: x - 4, y: bottom },
        { x: x + 4, y: bottom },
      ],
      FINE,
    ),
    line(
      'DIMENSION',
      [
        { x: x - 4, y: top },
        { x: x + 4, y: top },
      ],
      FINE,
    ),
    words('TEXT', x - 2, (bottom + top) / 2, `over all ${lengthInWords(top - bottom, unit)}`, SIZE, {
      anchor: 'middle',
      turn: Math.PI / 2,
    }),
  ];
}

function title(tube: SolvedTube, { left, top }: Extents, findings: readonly Finding[], unit: LengthUnit): Mark[] {
  const blank = `finished blank ${lengthInWords(tube.blankLength, unit)}, places from its end A`;
  const told = `${sectionInWords(tube.section, unit)}, ${blank}`;
  const errors = errorsOf(findings, tube.id);
  return [
    words('TEXT', left, top + 44, numbered(tube), 10, { bold: true }),
    words('TEXT', left, top + 34, told, SIZE),
    ...(errors.length > 0
      ? [words('TEXT', left, top + 24, `! ${faultInWords(errors)}: see the checks.`, SIZE, { bold: true })]
      : []),
  ];
}
