/**
 * The least distance between the outsides of two coped tubes, and where; negative when one is inside the other: then the deepest
 * place of either's wall or flat cut inside the other (docs/maths/gaps.md).
 *
 * Away from the ends the centrelines decide it: their distance less both radii. That is never more than the true distance, so it is the
 * answer wherever both walls stand at the places it comes from. Where one is cut away there, the rims are looked at, to walls, rims and
 * faces; and where the two bars would run into each other, what is left of their walls and faces inside the other.
 */
import { nearPlaces } from '../geometry/near-places.ts';
import { placeOnPiece, type Piece } from '../geometry/path.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import {
  addScaled,
  cross,
  dot,
  length,
  normalize,
  scale,
  subtract,
  X_AXIS,
  Y_AXIS,
  type Vec3,
} from '../geometry/vector.ts';
import { nearestAtEnds } from './at-ends.ts';
import { TOLERANCE, type Deepest, type Span } from './deepest.ts';
import { axisComesIn, deepestOfFaces, deepestOfRims, type Parts } from './faces.ts';
import { wallStands, type Outside } from './outside.ts';
import { depthIn, tubeSolid, wayOutOf, type Solid } from './solid.ts';

/** How near two outsides are, mm, and a place on each. Of tubes that run into each other the deepest place, and its nearest way out. */
export interface NearestOutsides {
  readonly distance: number;
  readonly onA: Vec3;
  readonly onB: Vec3;
}

/** Places at which the two centrelines come nearest to one another. */
interface Near {
  readonly distance: number;
  readonly a: Piece;
  readonly b: Piece;
  readonly onA: Vec3;
  readonly onB: Vec3;
  readonly atA: number;
  readonly atB: number;
  readonly tangentA: Vec3;
  readonly tangentB: Vec3;
}

/** Null where they are `below` mm apart or more. */
export function gapBetween(a: Outside, b: Outside, below: number): NearestOutsides | null {
  const reach = a.radius + b.radius;
  const near = nearOf(a, b, below + reach);
  if (near.length === 0) return null;
  const floor = near[0]!.distance - reach;
  let best: NearestOutsides | null = null;
  const better = (found: NearestOutsides | null): void => {
    if (found !== null && found.distance < (best?.distance ?? below)) best = found;
  };
  const least = (): number => best?.distance ?? below;
  for (const each of near) {
    if (each.distance - reach >= least()) break;
    better(betweenWalls(a, b, each));
  }
  if (least() <= floor + ROUNDING) return best;
  if (floor < 0) {
    const through = runThrough(
      a,
      b,
      near.filter((each) => each.distance < reach),
      least(),
    );
    if (through !== null) return through;
    if (least() < 0) return best;
  }
  return nearestAtEnds(a, b, least()) ?? best;
}

/**
 * The deepest place of either in the other, where they run into each other deeper than `below`; null where they do not. A tube that
 * is in another has an edge of its cut in it or on it (two that land on one run overlap along the run), or its axis in it, or a wall
 * that the other's faces straight (which `below` then says), unless a bend bulges into a flat cut: without any of these the faces
 * need not be searched.
 */
function runThrough(a: Outside, b: Outside, near: readonly Near[], below: number): NearestOutsides | null {
  const [solidA, solidB] = [tubeSolid(a), tubeSolid(b)];
  const reach = a.radius + b.radius;
  let best: NearestOutsides | null = null;
  const least = (): number => Math.min(best?.distance ?? below, -TOLERANCE);
  const take = (found: Deepest | null, solid: Solid, isOnA: boolean): void => {
    if (found !== null) best = wayOut(found, solid, isOnA);
  };
  const [rimsInB, rimsInA] = [deepestOfRims(a, solidB, TOLERANCE), deepestOfRims(b, solidA, TOLERANCE)];
  if (rimsInB !== null && rimsInB.value < least()) take(rimsInB, solidB, true);
  if (rimsInA !== null && rimsInA.value < least()) take(rimsInA, solidA, false);
  const [ofA, ofB] = [partsWithin(near, true, reach), partsWithin(near, false, reach)];
  const isIn =
    rimsInA !== null ||
    rimsInB !== null ||
    below < 0 ||
    near.some((each) => each.a.kind === 'arc' || each.b.kind === 'arc') ||
    (near[0]!.distance < Math.max(a.radius, b.radius) && (axisComesIn(ofA, solidB) || axisComesIn(ofB, solidA)));
  if (!isIn) return null;
  take(deepestOfFaces(a, ofA, solidB, least()), solidB, true);
  take(deepestOfFaces(b, ofB, solidA, least()), solidA, false);
  return best;
}

/** Of each piece of A, or of B, that comes nearer than `reach` to the other, the part that does. */
function partsWithin(near: readonly Near[], isOfA: boolean, reach: number): Parts {
  const parts = new Map<Piece, Span>();
  for (const each of near) {
    const [piece, other] = isOfA ? [each.a, each.b] : [each.b, each.a];
    const span = spanWithin(piece, other, (isOfA ? each.atA : each.atB) - piece.at, reach);
    const known = parts.get(piece);
    parts.set(piece, known === undefined ? span : [Math.min(known[0], span[0]), Math.max(known[1], span[1])]);
  }
  return parts;
}

/** Of a straight beside another, which are nearest at `along` or farther apart there: no part beyond comes as near as `reach`. */
function spanWithin(piece: Piece, other: Piece, along: number, reach: number): Span {
  if (piece.kind === 'arc' || other.kind === 'arc') return [0, piece.length];
  const uv = dot(piece.startTangent, other.startTangent);
  const sine = Math.sqrt(Math.max(0, 1 - uv * uv));
  const half = (2 * reach) / sine;
  return [Math.max(0, along - half), Math.min(piece.length, along + half)];
}

/** From the deepest place, on A's outside or on B's, straight to the other's. */
function wayOut({ value, at }: Deepest, solid: Solid, isOnA: boolean): NearestOutsides {
  const out = wayOutOf(solid, at, value);
  return { distance: value, onA: isOnA ? at : out, onB: isOnA ? out : at };
}

/** Nearest first. */
function nearOf(a: Outside, b: Outside, below: number): Near[] {
  const found: Near[] = [];
  for (const pieceA of a.pieces) {
    for (const pieceB of b.pieces) {
      nearPlaces(pieceA, pieceB, below, ({ distance, alongA, alongB }) => {
        const [onA, onB] = [placeOnPiece(pieceA, alongA), placeOnPiece(pieceB, alongB)];
        found.push({
          distance,
          a: pieceA,
          b: pieceB,
          onA: onA.point,
          onB: onB.point,
          atA: onA.at,
          atB: onB.at,
          tangentA: onA.tangent,
          tangentB: onB.tangent,
        });
      });
    }
  }
  return found.toSorted((one, other) => one.distance - other.distance);
}

/**
 * The direction from A to B between the nearest places of their centrelines, a unit vector, square to both where they cross; and how
 * many mm their distance lacks of both radii. Moved so far that way, two straight tubes are clear of each other.
 */
export function wayApart(a: Outside, b: Outside): { readonly direction: Vec3; readonly lacking: number } {
  const { distance, onA, onB, tangentA, tangentB } = nearOf(a, b, Infinity)[0]!;
  const direction = distance > ROUNDING ? scale(subtract(onB, onA), 1 / distance) : squareTo(tangentA, tangentB);
  return { direction, lacking: a.radius + b.radius - distance };
}

/** mm along a centreline: a place this near to where the other is straight beside it is that place. */
const BESIDE = 1e-6;

/** Between the two walls straight between two places of the centrelines; null where one is not straight beside the other, or is cut away. */
function betweenWalls(a: Outside, b: Outside, near: Near): NearestOutsides | null {
  const { distance, onA, onB, atA, atB, tangentA, tangentB } = near;
  const apart = subtract(onB, onA);
  if (Math.abs(dot(apart, tangentA)) > BESIDE || Math.abs(dot(apart, tangentB)) > BESIDE) return null;
  const across = distance > ROUNDING ? scale(apart, 1 / distance) : squareTo(tangentA, tangentB);
  const back = scale(across, -1);
  const [wallA, wallB] = [addScaled(onA, across, a.radius), addScaled(onB, back, b.radius)];
  const [standsA, standsB] = [wallStands(a, atA, across), wallStands(b, atB, back)];
  const gap = distance - a.radius - b.radius;
  if (gap >= 0) return standsA && standsB ? { distance: gap, onA: wallA, onB: wallB } : null;
  const [solidA, solidB] = [tubeSolid(a), tubeSolid(b)];
  const inB = standsA ? wayOut({ value: depthIn(solidB, wallA), at: wallA }, solidB, true) : null;
  const inA = standsB ? wayOut({ value: depthIn(solidA, wallB), at: wallB }, solidA, false) : null;
  const deeper = inB !== null && (inA === null || inB.distance <= inA.distance) ? inB : inA;
  return deeper !== null && deeper.distance < 0 ? deeper : null;
}

/** A unit vector square to two others; where these run alike, one of those square to them. */
export function squareTo(u: Vec3, v: Vec3): Vec3 {
  const across = cross(u, v);
  if (length(across) > ROUNDING) return normalize(across);
  return normalize(cross(u, Math.abs(u[0]) < 0.6 ? X_AXIS : Y_AXIS));
}
