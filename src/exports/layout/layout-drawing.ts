/**
 * A flat tube at full size: what is drawn on a floor to bend and to check a hoop by. Centreline, both edges, the tangents with their
 * places along the blank, both ends as they are cut and where they are sawn, and what a tape measures across it. Layers: CENTRELINE, EDGE,
 * TANGENT, END (END_BACK behind the tube), SAWN, NODE, DIMENSION, TEXT.
 */
import type { Finding } from '../../core/checks/types.ts';
import { cross, dot, scale } from '../../core/geometry/vector.ts';
import type { LengthUnit } from '../../core/units/length.ts';
import { extremesOf, type FlatArc, type FlatLine, type FlatPlace, type FlatTube } from '../../core/run/lay-flat.ts';
import { inSpace } from '../../core/cope/wrap.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { boxOf } from '../../drawing/clear.ts';
import type { DxfLayer } from '../../drawing/dxf.ts';
import { moved } from '../../drawing/move.ts';
import { unknownFace } from '../../drawing/unknown-face.ts';
import { DASHED, FINE, FIRM, HAIR, line } from '../../drawing/strokes.ts';
import type { Arc, Line, Mark, Pen, Sheet } from '../../drawing/types.ts';
import { boundsOf, layoutWords } from './layout-words.ts';
import { numbered } from '../../core/words/ends.ts';

export const LAYOUT_LAYERS: readonly DxfLayer[] = [
  { name: 'CENTRELINE', colour: 5 },
  { name: 'EDGE', colour: 7 },
  { name: 'TANGENT', colour: 1 },
  { name: 'END', colour: 7 },
  { name: 'END_BACK', colour: 8 },
  { name: 'SAWN', colour: 2 },
  { name: 'NODE', colour: 6 },
  { name: 'DIMENSION', colour: 3 },
  { name: 'TEXT', colour: 3 },
];

/** Round all that is drawn. */
const BORDER = 6;

/** As a sheet that just holds it. `fine`: places along the blank as the finer of the unit's tapes shows them; `under`: what else is drawn in the tube's plane, and reaches where it will. */
export function layoutDrawing(
  tube: SolvedTube,
  flat: FlatTube,
  findings: readonly Finding[],
  unit: LengthUnit,
  fine: boolean,
  dimensioned: boolean,
  under: readonly Line[] = [],
): Sheet {
  const ra = tube.section.outerDiameter / 2;
  const curves = endCurves(tube, flat);
  const reached = [...flat.pieces.flatMap((piece) => reachOf(piece, ra)), ...curves.flatMap(({ places }) => places)];
  const written = layoutWords(tube, flat, boundsOf(reached), findings, unit, fine, dimensioned);
  const whole = boundsOf([...reached, ...[...under, ...written].flatMap(placesOf)]);
  const marks = [
    ...under,
    ...flat.pieces.map((piece) => drawn('CENTRELINE', piece, 0, HAIR, [0, 0])),
    ...edges(tube, flat, ra),
    ...curves.map(({ layer, places }) => line(layer, places, layer === 'END' ? FIRM : DASHED)),
    ...written,
  ];
  return {
    name: numbered(tube),
    width: whole.right - whole.left + 2 * BORDER,
    height: whole.top - whole.bottom + 2 * BORDER,
    marks: moved(marks, BORDER - whole.left, BORDER - whole.bottom),
  };
}

/** Of what is written, which has no arcs. */
const placesOf = (mark: Mark): readonly FlatPlace[] =>
  mark.kind === 'line' ? mark.places : mark.kind === 'words' ? boxOf(mark, unknownFace) : [];

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
    const { outer, lows, high, direction, reference } = tube.ends[which];
    const inFront = dot(cross(direction, reference), flat.toEye) > 0;
    return ([0, 180] as const).flatMap((from) => {
      const layer = inFront === (from === 0) ? 'END' : 'END_BACK';
      const degrees = Array.from({ length: 181 }, (_, i) => from + i);
      const whole = degrees.map((degree) => ({ phi: (degree * Math.PI) / 180, s: outer[degree % 360]! }));
      if (whole.some(({ s }) => Number.isNaN(s))) return [];
      const between = [...lows, ...(high === null ? [] : [high])]
        .map(({ phi, s }) => ({ phi: phi < 0 ? phi + 2 * Math.PI : phi, s }))
        .filter(({ phi }) => phi > whole[0]!.phi && phi < whole.at(-1)!.phi);
      const places = [...whole, ...between]
        .toSorted((a, b) => a.phi - b.phi)
        .map((place) => flat.onPlane(inSpace(tube, which, place)));
      return [{ layer, places }];
    });
  });
}
