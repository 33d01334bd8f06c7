/**
 * One tube as an exact solid: the wall swept along its centreline, its ends cut. No allowance is left on it: this is the
 * tube as it stands in the frame.
 *
 * A cope is cut by the outside of the run, filled, its end straights prolonged; of the run only what lies about the joint
 * cuts, so that a hoop's other leg, a metre on, leaves the tube alone. The tube starts at its tip: what would stand
 * beyond, on the node's side of the cut, is not part of it, and where the wall passes the run by it is left to the tip.
 * Of the pieces that the cuts leave the greatest is the tube. A plate cuts along its plane; a square end stands square
 * at the node.
 */
import type { ArcPiece, Path, Piece } from '../../core/geometry/path.ts';
import { addScaled, cross, dot, length, normalize, scale, subtract, type Vec3 } from '../../core/geometry/vector.ts';
import type { TubeRef } from '../../core/job/types.ts';
import { STEEL_DENSITY } from '../../core/solve/amount.ts';
import type { SolvedTube, TubeEnd } from '../../core/solve/types.ts';
import { isWhole } from '../whole.ts';
import { bar, cutBy, isValid, scoped, solidsIn, sweptSolid, tangentAt, volumeOf } from './kernel.ts';
import type { Keep, Kernel, Shape, Stretch } from './kernel.ts';

/** How far before its tip a coped end is begun: the edge of a cope runs out a little beyond the whole degrees' least. */
const BEFORE_TIP = 0.5;
/** What is modelled beyond what is needed, so that no face of a tool ends within the tube. */
const CLEAR = 1;
/** The kernel can give up on a cut in silence: a body that is off the tube's mass by this share is none. */
const MASS_AGREES = 0.01;
/** Directions, radians about the tube, in which its seam is tried: a cut that runs along a seam may fail. */
const SEAMS = [0.3, 1.7, 4.1];

/**
 * The body of a tube, noted with `keep`; null where there is none: bends that overlap, or cuts that leave nothing whole.
 */
export function tubeBody(
  oc: Kernel,
  keep: Keep,
  tube: SolvedTube,
  byId: ReadonlyMap<TubeRef, SolvedTube>,
): Shape | null {
  if (!isWhole(tube)) return null;
  for (const seam of SEAMS) {
    const body = bodyWithSeam(oc, keep, tube, byId, seam);
    if (body !== null) return body;
  }
  return null;
}

function bodyWithSeam(
  oc: Kernel,
  keep: Keep,
  tube: SolvedTube,
  byId: ReadonlyMap<TubeRef, SolvedTube>,
  seam: number,
): Shape | null {
  const { outerDiameter, wall } = tube.section;
  const [endA, endB] = tube.ends;
  const chain = chainOf(tube.path, startOf(endA), startOf(endB));
  const across = addScaled(
    scale(endA.reference, Math.cos(seam)),
    cross(endA.direction, endA.reference),
    Math.sin(seam),
  );
  return scoped((brief) => {
    const whole = sweptSolid(oc, brief, chain, outerDiameter / 2, outerDiameter / 2 - wall, across);
    const tools = tube.ends.flatMap((end) => toolsOf(oc, brief, end, outerDiameter / 2, byId, across));
    if (tools.length === 0) return keep(oc.TopoDS.Solid(whole));
    const pieces = solidsIn(oc, brief, cutBy(oc, brief, whole, tools));
    const [greatest] = pieces
      .map((piece) => ({ piece, volume: volumeOf(oc, brief, piece) }))
      .toSorted((a, b) => b.volume - a.volume);
    if (greatest === undefined || !isValid(oc, brief, greatest.piece)) return null;
    const isTube = Math.abs((greatest.volume * STEEL_DENSITY) / tube.mass - 1) < MASS_AGREES;
    return isTube ? keep(oc.TopoDS.Solid(greatest.piece)) : null;
  });
}

/** Least and greatest trim of an end, both faces of the wall; null where nothing cuts it. */
function extent({ outer, inner }: TubeEnd): { readonly least: number; readonly greatest: number } | null {
  let [least, greatest] = [Infinity, -Infinity];
  for (const profile of [outer, inner]) {
    for (const trim of profile) {
      if (trim < least) least = trim;
      if (trim > greatest) greatest = trim;
    }
  }
  return least === Infinity ? null : { least, greatest };
}

/** Where the uncut tube begins, mm from the node into it. */
function startOf(end: TubeEnd): number {
  const trims = extent(end);
  if (end.fit === 'square' || trims === null) return 0;
  if (end.fit === 'plate') return trims.least - CLEAR;
  return end.passedBy ? end.tip! : trims.least - BEFORE_TIP;
}

/** The path's pieces, its ends moved to so many mm into the tube from either node (or out of it). */
function chainOf({ pieces }: Path, atA: number, atB: number): readonly Stretch[] {
  const whole = pieces.map((piece) => ({ piece, from: 0, to: piece.length }));
  const [first, last] = [pieces[0]!, pieces.at(-1)!];
  if (first.kind === 'line') whole[0] = { ...whole[0]!, from: Math.min(atA, first.length - CLEAR) };
  else if (atA < 0) whole.unshift({ piece: lineAt(first.from, first.startTangent), from: atA, to: 0 });
  if (last.kind === 'line') {
    const { from } = whole.at(-1)!;
    whole[whole.length - 1] = { piece: last, from, to: Math.max(last.length - atB, from + CLEAR) };
  } else if (atB < 0) whole.push({ piece: lineAt(last.to, last.endTangent), from: 0, to: -atB });
  return whole;
}

const lineAt = (from: Vec3, tangent: Vec3): Piece => ({
  kind: 'line',
  at: 0,
  length: 0,
  from,
  to: from,
  startTangent: tangent,
  endTangent: tangent,
});

/** What is cut away at an end. */
function toolsOf(
  oc: Kernel,
  keep: Keep,
  end: TubeEnd,
  radius: number,
  byId: ReadonlyMap<TubeRef, SolvedTube>,
  seam: Vec3,
): Shape[] {
  const trims = extent(end);
  if (trims === null) return [];
  const span = Math.max(Math.abs(trims.least), Math.abs(trims.greatest)) + CLEAR;
  // Everything of the tube that is cut at this end lies within this of the node.
  const about = Math.hypot(span, radius) + CLEAR;
  if (end.plateNormal !== null) {
    const normal = normalize(end.plateNormal);
    const outwards = scale(normal, dot(normal, end.direction) < 0 ? 1 : -1);
    return [bar(oc, keep, end.position, outwards, seamOff(outwards), 2 * about, 2 * about)];
  }
  return end.cuts.flatMap(({ against }) => {
    const run = byId.get(against)!;
    const chains = stretchesAbout(run.path, end.position, about, run.section.outerDiameter / 2);
    return chains.map((chain) =>
      sweptSolid(oc, keep, chain, run.section.outerDiameter / 2, null, seamOff(tangentAt(chain[0]!), seam)),
    );
  });
}

/** Some direction that does not lie along `axis`. */
const seamOff = (axis: Vec3, wanted: Vec3 = [0.36, 0.48, 0.8]): Vec3 =>
  length(cross(axis, wanted)) > 0.2 * length(wanted) ? wanted : [0.8, -0.6, 0];

/** Of a run's centreline, its end straights prolonged, what is within reach of the ball of radius `about` round `centre`, in chains. */
function stretchesAbout({ pieces }: Path, centre: Vec3, about: number, radius: number): Stretch[][] {
  const [first, last] = [pieces[0]!, pieces.at(-1)!];
  const prolonged: Stretch[] = pieces.map((piece) => ({
    piece,
    from: piece === first && piece.kind === 'line' ? -Infinity : 0,
    to: piece === last && piece.kind === 'line' ? Infinity : piece.length,
  }));
  if (first.kind === 'arc')
    prolonged.unshift({ piece: lineAt(first.from, first.startTangent), from: -Infinity, to: 0 });
  if (last.kind === 'arc') prolonged.push({ piece: lineAt(last.to, last.endTangent), from: 0, to: Infinity });

  const chains: Stretch[][] = [];
  let joins = false;
  for (const stretch of prolonged) {
    const near = within(stretch, centre, about, radius);
    if (near !== null) {
      if (joins && near.from === stretch.from) chains.at(-1)!.push(near);
      else chains.push([near]);
    }
    joins = near !== null && near.to === stretch.to;
  }
  return chains;
}

/** The part of a stretch whose discs of `radius` may reach into the ball; null if none does. */
function within(stretch: Stretch, centre: Vec3, about: number, radius: number): Stretch | null {
  const { piece } = stretch;
  const [low, high] =
    piece.kind === 'line' ? lineSpan(piece, centre, about, radius) : arcSpan(piece, centre, about, radius);
  const [from, to] = [Math.max(low, stretch.from), Math.min(high, stretch.to)];
  return to - from > 1e-6 ? { piece, from, to } : null;
}

function lineSpan(
  { from, startTangent }: Piece,
  centre: Vec3,
  about: number,
  radius: number,
): readonly [number, number] {
  const foot = dot(subtract(centre, from), startTangent);
  const aside = length(subtract(centre, addScaled(from, startTangent, foot)));
  return aside > about + radius ? [0, 0] : [foot - about, foot + about];
}

function arcSpan(arc: ArcPiece, centre: Vec3, about: number, radius: number): readonly [number, number] {
  const d = subtract(centre, arc.centre);
  const x = dot(d, subtract(arc.from, arc.centre)) / arc.radius;
  const y = dot(d, arc.startTangent);
  const inPlane = Math.hypot(x, y);
  if (Math.hypot(inPlane - arc.radius, dot(d, arc.normal)) > about + radius && inPlane > about) return [0, 0];
  if (inPlane <= about) return [0, arc.length];
  const half = Math.asin(about / inPlane);
  // Counted from the middle of the arc, so that the turn does not wrap round within it.
  const middle = arc.angle / 2;
  const off = Math.atan2(Math.sin(Math.atan2(y, x) - middle), Math.cos(Math.atan2(y, x) - middle));
  return [(middle + off - half) * arc.radius, (middle + off + half) * arc.radius];
}
