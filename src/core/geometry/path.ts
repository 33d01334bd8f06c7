/**
 * A tube's centreline: straight and circular pieces, each beginning where the one before ends, tangent to it.
 *
 * A place on it is told by the developed length from its start. Where bends overlap, a straight between them is
 * negative: it stays in the sum of lengths but has no piece here.
 */
import type { Radians } from './angle.ts';
import type { Vec3 } from './vector.ts';

interface PieceBase {
  /** Developed length from the path's start to the piece's start. */
  readonly at: number;
  readonly length: number;
  readonly from: Vec3;
  readonly to: Vec3;
  /** Unit tangents at its start and end, in the direction of travel. */
  readonly startTangent: Vec3;
  readonly endTangent: Vec3;
}

export interface LinePiece extends PieceBase {
  readonly kind: 'line';
}

export interface ArcPiece extends PieceBase {
  readonly kind: 'arc';
  readonly centre: Vec3;
  readonly radius: number;
  /** Unit normal: travel is right-hand about it. */
  readonly normal: Vec3;
  /** (0, pi). */
  readonly angle: Radians;
}

export type Piece = LinePiece | ArcPiece;

export interface Path {
  readonly pieces: readonly Piece[];
  readonly length: number;
}
