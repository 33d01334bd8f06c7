/**
 * The frames that a tube's wall is swept through, from end A to end B, turned along without twist: on a straight the
 * frame stays as it is, in a bend it turns with the bend about the bend's own axis.
 */
import {
  X_AXIS,
  Y_AXIS,
  addScaled,
  cross,
  rejectFrom,
  normalize,
  rotateAbout,
  subtract,
  type Vec3,
} from '../geometry/vector.ts';
import type { ArcPiece, Path } from '../geometry/path.ts';

/** A place on the centreline; angle phi about it counts right-hand about `tangent` from `across`. */
export interface SweepFrame {
  readonly at: Vec3;
  /** Unit, from A to B. */
  readonly tangent: Vec3;
  /** Unit, square to the tangent. */
  readonly across: Vec3;
  /** tangent x across. */
  readonly beside: Vec3;
}

/** Steps of a bend as it is drawn on the screen. */
const DRAWN_STEP = (8 * Math.PI) / 180;

const frameAt = (at: Vec3, tangent: Vec3, across: Vec3): SweepFrame => ({
  at,
  tangent,
  across,
  beside: cross(tangent, across),
});

/** Frames along one bend, both tangents included; in equal steps. */
function framesOfArc(arc: ArcPiece, across: Vec3, greatestStep: number): SweepFrame[] {
  const steps = Math.max(1, Math.ceil(arc.angle / greatestStep));
  const spoke = subtract(arc.from, arc.centre);
  return Array.from({ length: steps + 1 }, (_, step) => {
    const turn = (arc.angle * step) / steps;
    return frameAt(
      addScaled(arc.centre, rotateAbout(spoke, arc.normal, turn), 1),
      rotateAbout(arc.startTangent, arc.normal, turn),
      rotateAbout(across, arc.normal, turn),
    );
  });
}

/**
 * Frames at end A, through every bend (its tangents included), and at end B.
 * `reference` is the direction of phi = 0 at end A; the part of it square to the tube is used.
 * Bends go in steps of at most `greatestStep` radians. An empty path has no frames.
 */
export function sweepFrames(path: Path, reference: Vec3, greatestStep = DRAWN_STEP): readonly SweepFrame[] {
  const first = path.pieces[0];
  const last = path.pieces.at(-1);
  if (first === undefined || last === undefined) return [];
  let across = normalize(rejectFrom(reference, first.startTangent));
  const frames = [frameAt(first.from, first.startTangent, across)];
  for (const piece of path.pieces) {
    if (piece.kind === 'line') continue;
    const bend = framesOfArc(piece, across, greatestStep);
    frames.push(...bend);
    across = bend.at(-1)!.across;
  }
  frames.push(frameAt(last.to, last.endTangent, across));
  return frames;
}

/** The centreline as a chain of places, bends in steps; empty for an empty path. */
export function centrelineChain(path: Path): readonly Vec3[] {
  const first = path.pieces[0];
  if (first === undefined) return [];
  // Any direction off the tube's own will do: only the places are used.
  const aside = Math.abs(first.startTangent[0]) < 0.8 ? X_AXIS : Y_AXIS;
  return sweepFrames(path, aside).map((frame) => frame.at);
}
