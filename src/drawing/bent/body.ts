/**
 * A bent tube's outline in a view, nearer pieces over farther: both walls, bends round, a line across where a bend begins and ends, its ends
 * sawn square. Seen along its axis a tube is a disc; a bend that is foreshortened is drawn as the disc that moves along it.
 */
import { toDegrees } from '../../core/geometry/angle.ts';
import { placeOnPiece, type Piece } from '../../core/geometry/path.ts';
import { dot, scale as scaled, type Vec3 } from '../../core/geometry/vector.ts';
import type { SawnTube } from '../../core/run/sawn-tube.ts';
import { disc, FINE, onLayer, shape } from '../ink.ts';
import { project, type View } from '../projection.ts';
import type { Mark, Place2 } from '../types.ts';
import { added, long, type Bar } from './room.ts';

/** Degrees of a bend between two places of its outline. */
const STEP = 4;
/** Of the tube's length that is seen: with less of it a bend or an end is drawn as foreshortened. */
const IN_FULL = 0.999;
/** With less of it a tube is seen end-on. */
const END_ON = 1e-3;
const LAYER = 'steel';
const AROUND = 36;

interface At extends Place2 {
  /** Of the tube's direction, as it is seen; shorter than 1 where it is foreshortened. */
  readonly way: Place2;
}

/** The tube's marks on the picture, at `scale`, the car's origin at the picture's. */
export function bodyMarks(form: SawnTube, view: View, scale: number): Mark[] {
  const { pieces, outerDiameter } = form;
  const half = (scale * outerDiameter) / 2;
  const depth = ({ from, to }: Piece): number => dot(from, view.toEye) + dot(to, view.toEye);
  const drawn = pieces.map((piece, i) => {
    const places = seenAlong(piece, view, scale);
    const faces = [
      ...(i === 0 ? [faceOf(piece.from, scaled(piece.startTangent, -1), view, scale, half)] : []),
      ...(i === pieces.length - 1 ? [faceOf(piece.to, piece.endTangent, view, scale, half)] : []),
    ];
    const behind = faces.filter(({ isTurnedAway }) => isTurnedAway).flatMap(({ marks }) => marks);
    const before = faces.filter(({ isTurnedAway }) => !isTurnedAway).flatMap(({ marks }) => marks);
    return { depth: depth(piece), marks: [...behind, ...pieceMarks(places, half), ...before] };
  });
  return drawn.toSorted((a, b) => a.depth - b.depth).flatMap(({ marks }) => marks);
}

/** The same as lines of its breadth, for what is to stand clear of it. */
export function bodyBars({ pieces, outerDiameter }: SawnTube, view: View, scale: number): Bar[] {
  const places = pieces.flatMap((piece) => seenAlong(piece, view, scale, 3 * STEP));
  return places.slice(1).map((to, i) => ({ from: places[i]!, to, half: (scale * outerDiameter) / 2 }));
}

function seenAlong(piece: Piece, view: View, scale: number, step = STEP): At[] {
  const count = piece.kind === 'line' ? 1 : Math.max(2, Math.ceil(toDegrees(piece.angle) / step));
  return Array.from({ length: count + 1 }, (_, i) => {
    const { point, tangent } = placeOnPiece(piece, (piece.length * i) / count);
    const [{ x, y }, way] = [project(view, point), project(view, tangent)];
    return { x: scale * x, y: scale * y, way };
  });
}

function pieceMarks(places: readonly At[], half: number): Mark[] {
  if (places.every(({ way }) => long(way) < END_ON)) return onLayer(LAYER, disc(places[0]!, half, FINE, 1));
  const seen = places.filter(({ way }) => long(way) >= END_ON);
  const isInOneOutline = places.length === 2 || places.every(({ way }) => long(way) > IN_FULL);
  if (isInOneOutline) return onLayer(LAYER, shape(outlineOf(seen, half), FINE, 1));
  const quads = (within: number) => seen.slice(1).map((to, i) => outlineOf([seen[i]!, to], within));
  const within = half - FINE.width / 2;
  const discs = places.slice(1, -1);
  return onLayer(
    LAYER,
    ...quads(half).map((quad) => shape(quad, FINE, null)),
    ...discs.filter(({ way }) => long(way) < 0.7).map((at) => disc(at, half, FINE, 1)),
    ...quads(within).map((quad) => shape(quad, null, 1)),
    ...discs.map((at) => disc(at, within, null, 1)),
  );
}

/** There along one wall and back along the other. */
function outlineOf(places: readonly At[], half: number): Place2[] {
  const wall = (side: 1 | -1): Place2[] =>
    places.map((at) => added(at, { x: -at.way.y, y: at.way.x }, (side * half) / long(at.way)));
  return [...wall(1), ...wall(-1).toReversed()];
}

/** A sawn end, an ellipse; nothing where it is seen as a line. */
function faceOf(
  place: Vec3,
  outwards: Vec3,
  view: View,
  scale: number,
  half: number,
): { readonly isTurnedAway: boolean; readonly marks: Mark[] } {
  const way = project(view, outwards);
  const isTurnedAway = way.depth < 0;
  const seen = long(way);
  if (seen > IN_FULL) return { isTurnedAway, marks: [] };
  const centre = project(view, place);
  const along = seen < END_ON ? { x: 1, y: 0 } : { x: way.x / seen, y: way.y / seen };
  const [short, wide] = [half * Math.abs(way.depth), half];
  const places = Array.from({ length: AROUND }, (_, i) => {
    const angle = (2 * Math.PI * i) / AROUND;
    const foot = { x: scale * centre.x, y: scale * centre.y };
    return added(added(foot, along, short * Math.cos(angle)), { x: -along.y, y: along.x }, wide * Math.sin(angle));
  });
  return { isTurnedAway, marks: onLayer(LAYER, shape(places, FINE, 1)) };
}
