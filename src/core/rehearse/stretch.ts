/**
 * A tube's centreline in stretches: straight ones, and chords under arcs with how far the arc stands off them at most.
 * A chord's stretch splits in two where that matters; so what is said of a stretch with its sag taken off holds for
 * the arc.
 */
import type { ArcPiece, Path } from '../geometry/path.ts';
import type { Vec3 } from '../geometry/vector.ts';

export interface Stretch {
  readonly from: Vec3;
  readonly to: Vec3;
  /** mm. No place of the centreline is farther from the chord; 0 on a straight. */
  readonly sag: number;
  /** Developed length from the path's start to its two ends. */
  readonly begins: number;
  readonly ends: number;
  /** The path's piece that it is of. */
  readonly piece: number;
  readonly arc: ArcPiece | null;
  /** Both halves, once somebody has asked for them. */
  halves: readonly [Stretch, Stretch] | null;
}

/** Of an arc, so much at first, in radians: 30 degrees. */
const WIDEST = Math.PI / 6;

/** The stretches of a path in its order, arcs cut into chords of 30 degrees at most. */
export function stretchesOf({ pieces }: Path): readonly Stretch[] {
  return pieces.flatMap((piece, index): Stretch[] => {
    if (piece.kind === 'line') {
      const { from, to, at, length } = piece;
      return [{ from, to, sag: 0, begins: at, ends: at + length, piece: index, arc: null, halves: null }];
    }
    const count = Math.ceil(piece.angle / WIDEST);
    const places = Array.from({ length: count + 1 }, (_, i) => placeOn(piece, (piece.length * i) / count));
    return places.slice(1).map((to, i) => {
      const begins = piece.at + (piece.length * i) / count;
      return chord(piece, index, begins, piece.at + (piece.length * (i + 1)) / count, places[i]!, to);
    });
  });
}

/** The two halves of an arc's stretch. */
export function halvesOf(stretch: Stretch): readonly [Stretch, Stretch] {
  if (stretch.halves !== null) return stretch.halves;
  const { piece, begins, ends, from, to } = stretch;
  const arc = stretch.arc!;
  const middle = (begins + ends) / 2;
  const place = placeOn(arc, middle - arc.at);
  stretch.halves = [chord(arc, piece, begins, middle, from, place), chord(arc, piece, middle, ends, place, to)];
  return stretch.halves;
}

function chord(arc: ArcPiece, piece: number, begins: number, ends: number, from: Vec3, to: Vec3): Stretch {
  const sag = arc.radius * (1 - Math.cos((ends - begins) / arc.radius / 2));
  return { from, to, sag, begins, ends, piece, arc, halves: null };
}

/** As placeOnPiece; a search asks this ten thousand times, so without the vectors in between. */
function placeOn({ centre, from, radius, startTangent }: ArcPiece, along: number): Vec3 {
  const c = Math.cos(along / radius);
  const s = radius * Math.sin(along / radius);
  const place = (k: 0 | 1 | 2): number => centre[k] + c * (from[k] - centre[k]) + s * startTangent[k];
  return [place(0), place(1), place(2)];
}
