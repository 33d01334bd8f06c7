/**
 * Where one path comes nearest to another.
 *
 * How far a place of the path is from the other path has a closed form (distanceToPath), and along the path that distance can change by
 * no more than one goes: between two places w apart on either side of a third it is nowhere less than it is there by more than w. So the path
 * is halved again and again, and a part that cannot hold the least is dropped; of what is left, where the way to the other
 * path stands square to the path is found by bisection.
 */
import { distanceToPath, nearestOnPath, placeOnPiece, type NearestPlace, type Path, type Piece } from './path.ts';
import { ROUNDING } from './tolerance.ts';
import { dot, subtract } from './vector.ts';

/** mm either side of its middle: a part of a straight or an arc as short as this is not halved again... */
const SHORT = 0.05;
/** ...nor one of a piece longer than a shop has that is this share of it: paths that run side by side drop no part. */
const SHARE = 2 ** -14;
/** A bisection this often halves any part to less than arithmetic tells apart. */
const HALVINGS = 60;

/** The place on the path nearest to the other path, and how far that is, mm. Of places equally near the first from the path's start. */
export function nearestToPath(path: Path, other: Path): NearestPlace {
  let best: NearestPlace | null = null;
  for (const piece of path.pieces) {
    for (const { low, high } of partsNearest(piece, other, best?.distance ?? Infinity)) {
      const place = squareBetween(piece, other, low, high);
      if (best === null || place.distance < best.distance - ROUNDING) best = place;
    }
  }
  return best!;
}

interface Part {
  readonly low: number;
  high: number;
}

/** Parts of the piece, mm from its start, that may hold a place nearer than `least`; neighbours put together. */
function partsNearest(piece: Piece, other: Path, least: number): readonly Part[] {
  const apart = (along: number) => distanceToPath(other, placeOnPiece(piece, along).point);
  const short = Math.max(SHORT, piece.length * SHARE);
  let nearest = Math.min(least, apart(0), apart(piece.length));
  let waiting = [{ middle: piece.length / 2, half: piece.length / 2 }];
  while (waiting[0]!.half > short) {
    const measured = waiting.map((part) => ({ ...part, apart: apart(part.middle) }));
    for (const part of measured) nearest = Math.min(nearest, part.apart);
    const kept = measured.filter((part) => part.apart - part.half <= nearest);
    if (kept.length === 0) return [];
    waiting = kept.flatMap(({ middle, half }) =>
      [-1, 1].map((side) => ({ middle: middle + (side * half) / 2, half: half / 2 })),
    );
  }
  const parts: Part[] = [];
  for (const { middle, half } of waiting) {
    const last = parts.at(-1);
    if (last !== undefined && middle - half <= last.high + ROUNDING) last.high = middle + half;
    else parts.push({ low: middle - half, high: middle + half });
  }
  return parts;
}

/** Where, between `low` and `high`, the way to the other path stops leading on along the piece: an end where it leads out of it. */
function squareBetween(piece: Piece, other: Path, low: number, high: number): NearestPlace {
  let [from, to] = [Math.max(low, 0), Math.min(high, piece.length)];
  /** Above 0 where the other path lies ahead. */
  const ahead = (along: number) => {
    const { point, tangent } = placeOnPiece(piece, along);
    return dot(subtract(nearestOnPath(other, point).point, point), tangent);
  };
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (from + to) / 2;
    if (ahead(middle) > 0) from = middle;
    else to = middle;
  }
  const ends = [low <= 0 ? 0 : from, from, high >= piece.length ? piece.length : to];
  return ends
    .map((along) => ({
      ...placeOnPiece(piece, along),
      distance: distanceToPath(other, placeOnPiece(piece, along).point),
    }))
    .reduce((best, place) => (place.distance < best.distance - ROUNDING ? place : best));
}
