/**
 * Where the wall of a finished tube still lies inside a run tube that it is coped to: farther on along the same lines, in a hollow that
 * it lies along, at the run tube's other leg, or where the tube itself bends back to it.
 *
 * The wall on an end's straight is gone through line by line, outside and bore, from where it is trimmed to where it ends, with all
 * stretches of the line inside the run tube (docs/maths/cope.md); bends and what lies between them by distances of axes. Both only where
 * it cannot be ruled out: most copes are seen to be clear from a few distances.
 */
import { addScaled, cross, type Vec3 } from '../geometry/vector.ts';
import { metBy, type Sleeve } from '../geometry/met-sleeve.ts';
import { nearestOnPath } from '../geometry/path.ts';
import { COSINES, GENERATORS, lastLeft, SINES } from '../geometry/sleeve.ts';
import { stretchesWithin } from '../geometry/stretches.ts';
import type { TubeRef } from '../job/reference.ts';
import { trimOn } from '../solve/end-cutter.ts';
import type { Cut, SolvedTube, TubeEnd } from '../solve/types.ts';
import { isClearBeside } from './clear-beside.ts';
import { DEEP, leastOf, type Deep } from './deep.ts';
import { deepestBetweenEnds } from './meets-between-ends.ts';

export interface MeetsAgain extends Deep {
  readonly end: 0 | 1;
  readonly runTube: TubeRef;
}

/** Each run tube that the finished tube, as coped, meets again, once, and the deepest place; in the order of its ends and cuts. */
export function meetsAgain(tube: SolvedTube): readonly MeetsAgain[] {
  const found: MeetsAgain[] = [];
  const seen = new Set<TubeRef>();
  for (const which of [0, 1] as const) {
    const { cuts, cutter } = tube.ends[which];
    cuts.forEach((cut, i) => {
      if (seen.has(cut.against)) return;
      seen.add(cut.against);
      const deepest = deepestIn(tube, cut.against, cutter.sleeves[i]!);
      if (deepest !== null) found.push({ end: which, runTube: cut.against, ...deepest });
    });
  }
  return found;
}

/** The deepest place of the finished tube's wall inside this sleeve; null where none is. */
function deepestIn(tube: SolvedTube, against: TubeRef, sleeve: Sleeve): Deep | null {
  const isStraight = tube.path.pieces.length === 1;
  const found: (Deep | null)[] = isStraight
    ? [deepestOnStraight(tube, 0, against, sleeve)]
    : [
        deepestOnStraight(tube, 0, against, sleeve),
        deepestBetweenEnds(tube, sleeve),
        deepestOnStraight(tube, 1, against, sleeve),
      ];
  return found.reduce((a, b) => (a === null || (b !== null && b.depth > a.depth) ? b : a));
}

/** The same on the straight that the end stands on; of a straight tube, on all of it. */
function deepestOnStraight(tube: SolvedTube, which: 0 | 1, against: TubeRef, sleeve: Sleeve): Deep | null {
  const end = tube.ends[which];
  const other = tube.path.pieces.length === 1 ? tube.ends[which === 0 ? 1 : 0] : null;
  const long = other === null ? Math.max(0, tube.straights.at(which === 0 ? 0 : -1)!) : tube.developedLength;
  if (long === 0) return null;
  const cutOf = (of: TubeEnd | null): Cut | null => of?.cuts.find((cut) => cut.against === against) ?? null;
  if (isClearBeside(sleeve, end, cutOf(end), other, cutOf(other), long)) return null;
  const { outerDiameter, wall } = tube.section;
  const walls = [outerDiameter / 2, outerDiameter / 2 - wall].map((rho) => onWall(end, other, long, sleeve, rho));
  return walls.reduce((a, b) => (a === null || (b !== null && b.depth > a.depth) ? b : a));
}

/** The deepest place of one face of the wall, on whole degrees and beside the deepest of these. */
function onWall(end: TubeEnd, other: TubeEnd | null, long: number, sleeve: Sleeve, rho: number): Deep | null {
  const { bundle } = end.cutter;
  const [met] = metBy([sleeve], bundle, rho);
  const side = cross(bundle.direction, bundle.reference);
  /** On the line at this many degrees, whole and `turn`, which is trimmed at both ends so far. */
  const onLine = (degree: number, turn: number, start: number, stop: number): Deep | null => {
    const phi = ((degree + turn) * Math.PI) / 180;
    const [c, n] = turn === 0 ? [COSINES[degree]!, SINES[degree]!] : [Math.cos(phi), Math.sin(phi)];
    const origin = addScaled(addScaled(bundle.origin, bundle.reference, rho * c), side, rho * n);
    let deepest: Deep | null = null;
    for (const { from, to } of stretchesWithin(met!, c, n)) {
      const [a, b] = [Math.max(from, start), Math.min(to, stop)];
      if (b - a < DEEP) continue;
      const placeAt = (s: number): Vec3 => addScaled(origin, bundle.direction, s);
      const outside = (s: number): number => nearestOnPath(sleeve.path, placeAt(s), true).distance - sleeve.radius;
      const s = leastOf(outside, a, b);
      const depth = -outside(s);
      if (depth > (deepest?.depth ?? DEEP)) deepest = { depth, at: placeAt(s) };
    }
    return deepest;
  };
  const onDegree = (degree: number, trims: Trims): Deep | null =>
    onLine(degree, trims.turn, trims.start(degree), trims.stop(degree));

  let best: (Deep & { readonly degree: number }) | null = null;
  const whole = trimsAt(end, other, long, rho, 0);
  const last = lastLeft(met!);
  for (let degree = 0; degree < GENERATORS; degree++) {
    if (last !== null && last[degree]! < whole.start(degree) + DEEP) continue;
    const deep = onDegree(degree, whole);
    if (deep !== null && deep.depth > (best?.depth ?? 0)) best = { ...deep, degree };
  }
  if (best === null) return null;
  const { degree } = best;
  const shallow = (turn: number): number => -(onDegree(degree, trimsAt(end, other, long, rho, turn))?.depth ?? 0);
  const turn = leastOf(shallow, -1, 1);
  const deep = onDegree(degree, trimsAt(end, other, long, rho, turn));
  return deep === null || deep.depth < best.depth ? best : deep;
}

interface Trims {
  readonly turn: number;
  /** Where the wall begins on the line at this degree and `turn`, and where it ends, mm from the end's node. */
  readonly start: (degree: number) => number;
  readonly stop: (degree: number) => number;
}

/** A line that nothing cuts stands down to the tip, and to the node where nothing is reached at all. */
function trimsAt(end: TubeEnd, other: TubeEnd | null, long: number, rho: number, turn: number): Trims {
  const trimOf = ({ cutter, outer }: TubeEnd, sense: 1 | -1): Float64Array =>
    turn === 0 && rho === cutter.section.outerDiameter / 2
      ? outer
      : trimOn(cutter, rho, (sense * turn * Math.PI) / 180);
  const here = trimOf(end, 1);
  // The other end's angles run the other way, from the same reference.
  const there = other === null ? null : trimOf(other, -1);
  const stands = (trim: number, of: TubeEnd): number => (Number.isNaN(trim) ? (of.tip ?? 0) : trim);
  return {
    turn,
    start: (degree) => stands(here[degree]!, end),
    stop: (degree) => (there === null ? long : long - stands(there[(GENERATORS - degree) % GENERATORS]!, other!)),
  };
}
