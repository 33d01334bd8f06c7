/**
 * Where the wall of a finished tube still lies inside a run tube that it is coped to: farther on along the same lines, in a hollow that
 * it lies along, at the run tube's other leg, or where the tube itself bends back to it.
 *
 * The wall on an end's straight is gone through line by line, outside and bore, from where it is trimmed to where it ends, with all
 * stretches of the line inside the run tube (docs/maths/cope.md); bends and what lies between them by distances of axes. Both only where
 * it cannot be ruled out: most copes are seen to be clear from a few distances.
 */
import { addScaled, cross, type Vec3 } from '../geometry/vector.ts';
import type { MetSleeve, Sleeve } from '../geometry/met-sleeve.ts';
import { distanceToPath } from '../geometry/path.ts';
import { COSINES, GENERATORS, SINES } from '../geometry/sleeve.ts';
import { stretchesWithin } from '../geometry/stretches.ts';
import { ANGLE_ROUNDING } from '../geometry/tolerance.ts';
import type { TubeRef } from '../job/reference.ts';
import { trimOnLine } from '../solve/end-cutter.ts';
import type { Cut, SolvedTube, TubeEnd } from '../solve/types.ts';
import { areLandedOn, isLineClear, piecesBeside, type Beside } from './clear-beside.ts';
import { DEEP, leastBelow, leastOf, type Deep } from './deep.ts';
import { deepestBetweenEnds } from './meets-between-ends.ts';
import type { AxisPiece } from './near-pieces.ts';

export interface MeetsAgain extends Deep {
  readonly end: 0 | 1;
  readonly runTube: TubeRef;
}

/** Degrees. Has no factor in common with 360, and soon comes near every degree: most lines are then seen to be less deep than one before. */
const STRIDE = 223;

const NONE: readonly MeetsAgain[] = [];

/** Each run tube that the finished tube, as coped, meets again, once, and the deepest place; in the order of its ends and cuts. */
export function meetsAgain(tube: SolvedTube): readonly MeetsAgain[] {
  let found: MeetsAgain[] | null = null;
  const isStraight = tube.path.pieces.length === 1;
  for (const end of [0, 1] as const) {
    const { cuts, cutter } = tube.ends[end];
    for (let i = 0; i < cuts.length; i++) {
      const { against: runTube, includedAngle } = cuts[i]!;
      const sleeve = cutter.sleeves[i]!;
      // What is straight, and not along a straight run tube, comes out of it once.
      if (isStraight && sleeve.path.pieces.length === 1 && includedAngle > ANGLE_ROUNDING) continue;
      const isSeen = end === 1 && cutBy(tube.ends[0], runTube) !== null;
      const deepest = isSeen ? null : deepestIn(tube, runTube, sleeve);
      if (deepest !== null) (found ??= []).push({ end, runTube, ...deepest });
    }
  }
  return found ?? NONE;
}

/** The cut at this end by that run tube; null where there is none. */
const cutBy = (end: TubeEnd, runTube: TubeRef): Cut | null => end.cuts.find((cut) => cut.against === runTube) ?? null;

/** The deepest place of the finished tube's wall inside this sleeve; null where none is. */
function deepestIn(tube: SolvedTube, against: TubeRef, sleeve: Sleeve): Deep | null {
  const first = deepestOnStraight(tube, 0, against, sleeve);
  if (tube.path.pieces.length === 1) return first;
  return deeper(deeper(first, deepestBetweenEnds(tube, sleeve)), deepestOnStraight(tube, 1, against, sleeve));
}

const deeper = (a: Deep | null, b: Deep | null): Deep | null =>
  a === null || (b !== null && b.depth > a.depth) ? b : a;

/** The same on the straight that the end stands on; of a straight tube, on all of it. */
function deepestOnStraight(tube: SolvedTube, which: 0 | 1, against: TubeRef, sleeve: Sleeve): Deep | null {
  const end = tube.ends[which];
  const other = tube.path.pieces.length === 1 ? tube.ends[which === 0 ? 1 : 0] : null;
  const long = other === null ? Math.max(0, tube.straights.at(which === 0 ? 0 : -1)!) : tube.developedLength;
  if (long === 0) return null;
  const otherCut = other === null ? null : cutBy(other, against);
  const beside = { sleeve, end, cut: cutBy(end, against), other, otherCut, long };
  const near = piecesBeside(beside);
  if (areLandedOn(beside, near)) return null;
  const { outerDiameter, wall } = tube.section;
  const faceOf = (rho: number): Deep | null => deepestOnFace(beside, near, rho);
  return deeper(faceOf(outerDiameter / 2), faceOf(outerDiameter / 2 - wall));
}

/** The deepest place of one face of the wall in these pieces, on whole degrees and beside the deepest of these. */
function deepestOnFace({ sleeve, end, other, long }: Beside, pieces: readonly AxisPiece[], rho: number): Deep | null {
  const { bundle } = end.cutter;
  const met: MetSleeve = {
    sleeve,
    bundle,
    rho,
    pieces: pieces.map((piece) => ({ ...piece, soonest: -Infinity, laid: null })),
  };
  const side = cross(bundle.direction, bundle.reference);
  /** On the line of this cosine and sine of phi, in what of the wall is left of it; null where that is nowhere as deep as `least`. */
  const onLine = (c: number, n: number, start: number, stop: number, least: number): Deep | null => {
    if (stop - start < DEEP || isLineClear(met, c, n, start, stop)) return null;
    const origin = addScaled(addScaled(bundle.origin, bundle.reference, rho * c), side, rho * n);
    let deepest: Deep | null = null;
    for (const { from, to } of stretchesWithin(met, c, n)) {
      const [a, b] = [Math.max(from, start), Math.min(to, stop)];
      if (b - a < DEEP) continue;
      const placeAt = (s: number): Vec3 => addScaled(origin, bundle.direction, s);
      const outside = (s: number): number => distanceToPath(sleeve.path, placeAt(s), true) - sleeve.radius;
      const s = leastBelow(outside, a, b, -Math.max(least, deepest?.depth ?? 0));
      if (s === null) continue;
      const depth = -outside(s);
      if (depth > (deepest?.depth ?? DEEP)) deepest = { depth, at: placeAt(s) };
    }
    return deepest;
  };

  let best: Deep | null = null;
  let at = 0;
  const whole = wholeDegrees(end, other, long, rho);
  for (let i = 0; i < GENERATORS; i++) {
    const degree = (i * STRIDE) % GENERATORS;
    const deep = onLine(COSINES[degree]!, SINES[degree]!, whole.start(degree), whole.stop(degree), best?.depth ?? 0);
    if (deep === null) continue;
    if (best === null || deep.depth > best.depth || (deep.depth === best.depth && degree < at))
      [best, at] = [deep, degree];
  }
  if (best === null) return null;
  const beside = (turn: number): Deep | null => {
    const phi = ((at + turn) * Math.PI) / 180;
    const start = standOf(trimOnLine(end.cutter, rho, phi), end);
    const stop = other === null ? long : long - standOf(trimOnLine(other.cutter, rho, -phi), other);
    return onLine(Math.cos(phi), Math.sin(phi), start, stop, 0);
  };
  return deeper(best, beside(leastOf((turn) => -(beside(turn)?.depth ?? 0), -1, 1)));
}

interface Trims {
  /** Where the wall begins on the line at this degree, and where it ends, mm from the end's node. */
  readonly start: (degree: number) => number;
  readonly stop: (degree: number) => number;
}

function wholeDegrees(end: TubeEnd, other: TubeEnd | null, long: number, rho: number): Trims {
  const trims = ({ cutter, outer, inner }: TubeEnd) => (rho === cutter.section.outerDiameter / 2 ? outer : inner);
  const here = trims(end);
  const there = other === null ? null : trims(other);
  return {
    start: (degree) => standOf(here[degree]!, end),
    // The other end's angles run the other way, from the same reference.
    stop: (degree) => (there === null ? long : long - standOf(there[(GENERATORS - degree) % GENERATORS]!, other!)),
  };
}

/** A line that nothing cuts stands down to the tip, and to the node where nothing is reached at all. */
const standOf = (trim: number, end: TubeEnd): number => (Number.isNaN(trim) ? (end.tip ?? 0) : trim);
