/**
 * A tube's centreline in stretches: straight ones, and chords under arcs with how far the arc stands off them at most. A chord's
 * stretch splits in two where that matters; so what is said of a stretch with its sag taken off holds for the arc.
 */
import type { ArcPiece, Path } from '../geometry/path.ts';
import { placeOnPiece } from '../geometry/path.ts';
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

export function stretchesOf({ pieces }: Path): readonly Stretch[] {
  return pieces.flatMap((piece, index): Stretch[] => {
    if (piece.kind === 'line') {
      const { from, to, at, length } = piece;
      return [{ from, to, sag: 0, begins: at, ends: at + length, piece: index, arc: null, halves: null }];
    }
    const count = Math.ceil(piece.angle / WIDEST);
    return Array.from({ length: count }, (_, i) =>
      chord(piece, index, piece.at + (piece.length * i) / count, piece.at + (piece.length * (i + 1)) / count),
    );
  });
}

/** The two halves of an arc's stretch. */
export function halvesOf(stretch: Stretch): readonly [Stretch, Stretch] {
  const { arc, piece, begins, ends } = stretch;
  const middle = (begins + ends) / 2;
  stretch.halves ??= [chord(arc!, piece, begins, middle), chord(arc!, piece, middle, ends)];
  return stretch.halves;
}

function chord(arc: ArcPiece, piece: number, begins: number, ends: number): Stretch {
  const { radius, at } = arc;
  const sag = radius * (1 - Math.cos((ends - begins) / radius / 2));
  const from = placeOnPiece(arc, begins - at).point;
  return { from, to: placeOnPiece(arc, ends - at).point, sag, begins, ends, piece, arc, halves: null };
}
