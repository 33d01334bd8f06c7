/**
 * How deep a tube stands in a gusset's sheet. The sheet is flat panels: of a flat gusset one; of a folded one two faces, the strip, and the chords of its two bends. Between a
 * tube's axis and a panel the least distance lies at the panel's edge, path against path; or over its inside, where the axis ends, crosses the panel's plane or
 * runs level with it: of a line's height over a plane, c + s d, and of an arc's, c + a cos f + b sin f, the least is one of these.
 */
import { placeOnPiece, type Path, type Piece } from '../geometry/path.ts';
import { nearestToPath } from '../geometry/nearest-paths.ts';
import { cross, dot, length, scale, subtract, type Vec3 } from '../geometry/vector.ts';
import { inCar, type Corner } from './corner.ts';
import { isWithin, linesThrough, piecesAlong, type Edge, type Place2 } from './edges.ts';
import { offFold, type Folded, type Station } from './fold.ts';
import type { MadeGusset } from './gussets.ts';
import { faceRound } from './mesh.ts';

interface Panel {
  readonly edges: readonly Edge[];
  /** Where the panel's own x and y count from, unit along both; it is as thick to either side. */
  readonly origin: Vec3;
  readonly across: readonly [Vec3, Vec3];
}

/** mm from the tube's outside to the steel of the sheet that lies deepest in it; below zero where it is clear by so much. */
export function depthInSheet(made: MadeGusset, thickness: number, axis: Path, radius: number): number {
  return radius - Math.min(...panelsOf(made).map((panel) => axisToPanel(axis, panel, thickness / 2)));
}

function panelsOf({ corner, sheet: { shape, edges } }: MadeGusset): readonly Panel[] {
  if (shape.kind === 'flat') return [facePanel(corner, edges, 0)];
  const { fold } = shape;
  const faces = fold.faces.map((face, i) => {
    const station = fold.stations.at(i === 0 ? 0 : -1)!;
    const round = faceRound(fold, face, station);
    return facePanel(corner, linesThrough([...round, round[0]!]), station.z);
  });
  // The lower bend's chord, the strip, the upper bend's: where the sheet's turn begins and ends.
  const { stations } = fold;
  const isStrip = ({ out }: Station): boolean => out[1] === 0;
  const stops = [stations[0]!, stations.find(isStrip)!, stations.findLast(isStrip)!, stations.at(-1)!];
  return [...faces, ...stops.slice(1).flatMap((to, i) => acrossFold(corner, fold, stops[i]!, to))];
}

const facePanel = (corner: Corner, edges: readonly Edge[], z: number): Panel => {
  const origin = inCar(corner, [0, 0], z);
  const [x, y] = (
    [
      [1, 0],
      [0, 1],
    ] as const
  ).map((place) => subtract(inCar(corner, place, z), origin));
  return { edges, origin, across: [x!, y!] };
};

/** From station to station, with the free edge; none where they are one. */
function acrossFold(corner: Corner, fold: Folded, from: Station, to: Station): readonly Panel[] {
  const place = ({ p, z }: Station, u: number): Vec3 => inCar(corner, offFold(fold, [u, p]), z);
  const origin = place(from, 0);
  const rise = subtract(place(to, 0), origin);
  const wide = length(rise);
  if (wide === 0) return [];
  const round: readonly Place2[] = [
    [from.ends[0], 0],
    [from.ends[1], 0],
    [to.ends[1], wide],
    [to.ends[0], wide],
  ];
  return [
    {
      edges: linesThrough([...round, round[0]!]),
      origin,
      across: [subtract(place(from, 1), origin), scale(rise, 1 / wide)],
    },
  ];
}

function axisToPanel(axis: Path, { edges, origin, across: [x, y] }: Panel, half: number): number {
  const normal = cross(x, y);
  const at =
    (height: number) =>
    ([a, b]: Place2): Vec3 =>
      [0, 1, 2].map((k) => origin[k]! + a * x[k]! + b * y[k]! + height * normal[k]!) as unknown as Vec3;
  const toEdges = [-half, 0, half].map((height) => {
    const pieces = piecesAlong(edges, at(height), normal);
    return nearestToPath({ pieces, length: 0 }, axis).distance;
  });
  const over = axis.pieces
    .flatMap((piece) => levels(piece, origin, normal).map((along) => placeOnPiece(piece, along).point))
    .filter((point) => isWithin(edges, [dot(subtract(point, origin), x), dot(subtract(point, origin), y)]))
    .map((point) => Math.max(0, Math.abs(dot(subtract(point, origin), normal)) - half));
  return Math.min(...toEdges, ...over);
}

/** How far along a piece it ends, crosses the plane, or runs level with it. */
function levels(piece: Piece, origin: Vec3, normal: Vec3): readonly number[] {
  const height = dot(subtract(piece.from, origin), normal);
  const rises = dot(piece.startTangent, normal);
  const found =
    piece.kind === 'line'
      ? [-height / rises]
      : levelsOfArc(dot(subtract(piece.centre, origin), normal), height, rises, piece.radius);
  return [0, piece.length, ...found.filter((along) => along > 0 && along < piece.length)];
}

/** Of the height c + a cos f + b sin f: its zeros and extremes in a turn, as lengths along the arc. */
function levelsOfArc(c: number, start: number, rises: number, radius: number): readonly number[] {
  const [a, b] = [start - c, rises * radius];
  const top = Math.atan2(b, a);
  const zero = Math.acos(-c / Math.hypot(a, b));
  const turns = [top, top + Math.PI, top + zero, top - zero];
  return turns.map((turn) => radius * (((turn % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI)));
}
