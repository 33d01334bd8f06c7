/** What of a coped tube may lie inside something else: the edges of its cuts, its axis, its walls and flat cuts. */
import type { Piece } from '../geometry/path.ts';
import { cross, dot, length, subtract, X_AXIS, Y_AXIS, type Vec3 } from '../geometry/vector.ts';
import { chainOf } from './chain.ts';
import { ballOfCut, flatCut, sidesOf } from './cut-face.ts';
import { axisLine, deepestOf, flatFace, wallFace, type Deepest, type Face, type Span } from './deepest.ts';
import { leastOnChain } from './least-on-chain.ts';
import { wallIsGone, wallStands, type Outside, type OutsideEnd } from './outside.ts';
import { depthIn, type Solid } from './solid.ts';

/** Parts of a tube, by the pieces of its centreline. */
export type Parts = ReadonlyMap<Piece, Span>;

/** The deepest place of the tube's rims inside the solid, if deeper than `below` (0 or negative, mm); else null. */
export function deepestOfRims({ ends }: Outside, solid: Solid, below: number): Deepest | null {
  const value = (p: Vec3): number => depthIn(solid, p);
  let deepest: Deepest | null = null;
  for (const end of ends) {
    const least: number = deepest?.value ?? below;
    const ball = ballOfCut(end);
    if (value(ball.centre) - ball.radius >= least) continue;
    deepest = leastOnChain(chainOf(end), { value, floor: value }, least) ?? deepest;
  }
  return deepest;
}

/** Whether the axis of these parts comes into the solid. */
export const axisComesIn = (parts: Parts, solid: Solid): boolean =>
  deepestOf(
    [...parts].map(([piece, span]) => axisLine(piece, span)),
    solid,
    0,
  ) !== null;

/** The deepest place of the walls of these parts, and of the tube's flat cuts, inside the solid, if deeper than `below`; else null. */
export const deepestOfFaces = (tube: Outside, parts: Parts, solid: Solid, below: number): Deepest | null =>
  deepestOf(
    [...[...parts].map(([piece, span]) => wallOf(tube, piece, span)), ...tube.ends.flatMap(faceOfCut)],
    solid,
    below,
  );

const wallOf = (tube: Outside, piece: Piece, span: Span): Face =>
  wallFace(piece, tube.radius, span, {
    stands: (at, towards) => wallStands(tube, at, towards),
    isGone: (at, towards, half, angle) => wallIsGone(tube, at, towards, half, angle),
  });

/** A flat cut is an ellipse: what of a square lies within the bar. */
function faceOfCut(end: OutsideEnd): readonly Face[] {
  const flat = flatCut(end);
  if (flat === null) return [];
  const [u] = end.axes;
  const lean = Math.abs(dot(flat.into, u));
  const sides = sidesOf(flat, lean < 1 - UPRIGHT ? u : Math.abs(u[0]) < 0.6 ? X_AXIS : Y_AXIS);
  // The second side runs down the slope, where the ellipse is long.
  const off = (p: Vec3): number => length(cross(subtract(p, end.origin), u)) - end.radius;
  return [flatFace(flat.place, sides, [end.radius, end.radius / lean], off)];
}

/** Of a cosine: a cut so near to square has no slope. */
const UPRIGHT = 1e-9;
