/**
 * Where along a tube its round wall is within a reach of a box: how much of it would be padded. The wall stands a radius about the centreline, so that is
 * where the centreline comes within the reach and the radius. No sampling: a stretch is kept or dropped whole where bounds say so (the distance changes by at
 * most 1 mm a mm, and bends down by no more than the centreline does, as in geometry/solid-box.ts), else it is halved, down to FINEST (docs/maths/head-room.md).
 */
import type { Piece } from '../geometry/path.ts';
import { placeOnPiece } from '../geometry/path.ts';
import { signedDistanceToBox, type SolidBox } from '../geometry/solid-box.ts';
import { dot } from '../geometry/vector.ts';

/** From one developed length to another, mm. */
export interface Within {
  readonly from: number;
  readonly to: number;
}

/** mm. How finely the ends of a stretch are known. */
const FINEST = 1e-7;

/** The stretches of the centreline within `reach` mm of the box, in the order of the tube; what touches is one. */
export function centrelineWithin(pieces: readonly Piece[], box: SolidBox, reach: number): readonly Within[] {
  const found: Within[] = [];
  const keep = (from: number, to: number): void => {
    const last = found.at(-1);
    if (last !== undefined && from <= last.to + 2 * FINEST) found[found.length - 1] = { from: last.from, to };
    else found.push({ from, to });
  };
  for (const piece of pieces) {
    const curvature = piece.kind === 'arc' ? 1 / piece.radius : 0;
    const look = (from: number, to: number): void => {
      const half = (to - from) / 2;
      const { point, tangent } = placeOnPiece(piece, from + half);
      const { distance, gradient } = signedDistanceToBox(point, box);
      if (distance + half <= reach) return keep(piece.at + from, piece.at + to);
      const slope = Math.abs(dot(gradient, tangent));
      if (distance - slope * half - (curvature * half ** 2) / 2 > reach) return;
      if (half <= FINEST) return distance <= reach ? keep(piece.at + from, piece.at + to) : undefined;
      look(from, from + half);
      look(from + half, to);
    };
    look(0, piece.length);
  }
  return found;
}

/** The same stretches and others as one list, each place once. */
export function joinedStretches(all: readonly Within[]): readonly Within[] {
  const joined: Within[] = [];
  for (const each of all.toSorted((a, b) => a.from - b.from)) {
    const last = joined.at(-1);
    if (last !== undefined && each.from <= last.to)
      joined[joined.length - 1] = { ...last, to: Math.max(last.to, each.to) };
    else joined.push(each);
  }
  return joined;
}
