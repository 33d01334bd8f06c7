/**
 * One tube as an exact solid: the wall swept along its centreline, its ends cut. No allowance is left on it: this is the
 * tube as it stands in the frame.
 *
 * A cope is cut by the outside of the run tube, filled, its end straights prolonged; of the run tube only what lies about the joint
 * cuts, so that a hoop's other leg, a metre on, leaves the tube alone. The tube starts at its tip: what would stand
 * beyond, on the node's side of the cut, is not part of it, and where the wall passes the run tube by it is left to the tip.
 * Of the pieces that the cuts leave the greatest is the tube. A plate cuts along its plane; a square end stands square
 * at the node.
 */
import type { Path } from '../../core/geometry/path.ts';
import { ROUNDING } from '../../core/geometry/tolerance.ts';
import { addScaled, cross, dot, length, normalize, rejectFrom, scale, type Vec3 } from '../../core/geometry/vector.ts';
import { sectionArea, STEEL_DENSITY } from '../../core/solve/amount.ts';
import type { SolvedTube, TubeEnd } from '../../core/solve/types.ts';
import { isWhole } from '../shared/whole.ts';
import { lineFrom, stretchesAbout } from './about.ts';
import { bar, box, cutBy, isValid, scoped, solidsIn, sweptSolid, tangentAt, volumeOf } from './kernel.ts';
import type { Keep, Kernel, Shape, Stretch } from './kernel.ts';

/** How far before its tip a coped end is begun: the bore's edge runs out a little beyond the whole degrees' least. */
const BEFORE_TIP = 0.5;
/** What is modelled beyond what is needed, so that no face of a tool ends within the tube. */
const CLEAR = 1;
/** Behind a bend the run tube cuts again at steps of so much of its radius: what is left between two is a rim of less than a millimetre. */
const STEP_BEHIND = 0.5;
/** The kernel can give up on a cut in silence: a body that is off the tube's mass by this share is none. */
const MASS_AGREES = 0.01;
/** mm of the tube. What a cope is taken to take off at the least: masses are no better where it barely touches. */
const LEAST_TAKEN = 0.05;
/**
 * How a body is tried, one way after the other: where about the tube its seam runs, in radians, since a cut that runs along a seam
 * may fail; and whether what lies behind a narrow run tube is cut away whole, which may fail where the two are nearly alike.
 */
const WAYS = [
  { seam: 0.3, behind: true },
  { seam: 1.7, behind: true },
  { seam: 0.3, behind: false },
  { seam: 4.1, behind: false },
] as const;
type Way = (typeof WAYS)[number];

/** The body of a tube, noted with `keep`; null where it is not whole, or no way gives a valid body that agrees with its mass. */
export function tubeBody(oc: Kernel, keep: Keep, tube: SolvedTube): Shape | null {
  if (!isWhole(tube)) return null;
  for (const way of WAYS) {
    const body = tried(() => bodyBy(oc, keep, tube, way));
    if (body !== null) return body;
  }
  return null;
}

/** The kernel throws where it gives up aloud, and what it throws is an object of its own that says nothing. */
function tried(make: () => Shape | null): Shape | null {
  try {
    return make();
  } catch {
    return null;
  }
}

function bodyBy(oc: Kernel, keep: Keep, tube: SolvedTube, way: Way): Shape | null {
  const { outerDiameter, wall } = tube.section;
  const [endA, endB] = tube.ends;
  const chain = chainOf(tube.path, startOf(endA), startOf(endB));
  const beside = cross(endA.direction, endA.reference);
  const seam = addScaled(scale(endA.reference, Math.cos(way.seam)), beside, Math.sin(way.seam));
  return scoped((brief) => {
    const uncut = sweptSolid(oc, brief, chain, outerDiameter / 2, outerDiameter / 2 - wall, seam);
    const tools = tube.ends.flatMap((end) => toolsOf(oc, brief, end, outerDiameter / 2, seam, way.behind));
    const allowed = massAllowed(tube);
    const left = tools.length === 0 ? uncut : cutBy(oc, brief, uncut, tools);
    const [greatest] = solidsIn(oc, brief, left)
      .map((piece) => ({ piece, mass: STEEL_DENSITY * volumeOf(oc, brief, piece) }))
      .toSorted((a, b) => b.mass - a.mass);
    if (greatest === undefined || Math.abs(greatest.mass - tube.mass) > allowed) return null;
    return isValid(oc, brief, greatest.piece) ? keep(oc.TopoDS.Solid(greatest.piece)) : null;
  });
}

/**
 * How far a body may be off the tube's mass, kg: a share of it, and no more than half of the steel that the smaller of its copes takes off, so
 * that a body that an end is not cut on is none.
 */
function massAllowed(tube: SolvedTube): number {
  const coped = tube.ends.filter(({ cuts, tip }) => cuts.length > 0 && tip !== null);
  const taken = coped.map((end) => Math.max(LEAST_TAKEN, end.meanTrim - startOf(end)));
  return Math.min(MASS_AGREES * tube.mass, (STEEL_DENSITY * sectionArea(tube.section) * Math.min(...taken)) / 2);
}

/** Least and greatest trim of an end, both faces of the wall, on the bore of whole degrees; null where nothing cuts it. */
function extent({ tip, throat, inner }: TubeEnd): { readonly least: number; readonly greatest: number } | null {
  let [least, greatest] = [tip ?? Infinity, throat ?? -Infinity];
  for (const trim of inner) {
    if (trim < least) least = trim;
    if (trim > greatest) greatest = trim;
  }
  return least === Infinity ? null : { least, greatest };
}

/** Where the uncut tube begins, mm from the node into it. */
function startOf(end: TubeEnd): number {
  const trims = extent(end);
  if (end.fit === 'square' || trims === null) return 0;
  if (end.plateNormal !== null) return trims.least - CLEAR;
  return end.passedBy ? end.tip! : trims.least - BEFORE_TIP;
}

/** The path's pieces, its ends moved to so many mm into the tube from either node (or out of it). */
function chainOf({ pieces }: Path, atA: number, atB: number): readonly Stretch[] {
  const whole = pieces.map((piece) => ({ piece, from: 0, to: piece.length }));
  const [first, last] = [pieces[0]!, pieces.at(-1)!];
  if (first.kind === 'line') whole[0] = { ...whole[0]!, from: Math.min(atA, first.length - CLEAR) };
  else if (atA < 0) whole.unshift({ piece: lineFrom(first.from, first.startTangent), from: atA, to: 0 });
  if (last.kind === 'line') {
    const { from } = whole.at(-1)!;
    whole[whole.length - 1] = { piece: last, from, to: Math.max(last.length - atB, from + CLEAR) };
  } else if (atB < 0) whole.push({ piece: lineFrom(last.to, last.endTangent), from: 0, to: -atB });
  return whole;
}

/** What is cut away at an end. */
function toolsOf(oc: Kernel, keep: Keep, end: TubeEnd, radius: number, seam: Vec3, withBehind: boolean): Shape[] {
  const trims = extent(end);
  if (trims === null) return [];
  const span = Math.max(Math.abs(trims.least), Math.abs(trims.greatest)) + CLEAR;
  // Everything of the tube that is cut at this end lies within this of the node.
  const about = Math.hypot(span, radius) + CLEAR;
  if (end.plateNormal !== null) {
    const normal = normalize(end.plateNormal);
    const outwards = scale(normal, dot(normal, end.direction) < 0 ? 1 : -1);
    const onPlane = addScaled(end.position, end.direction, end.cutter.rise);
    return [bar(oc, keep, onPlane, outwards, seamOff(outwards), 2 * about, 2 * about)];
  }
  // As the cut was made: a tube that is held was cut by a run tube that may lie elsewhere now.
  return end.cuts.flatMap((cut, i) => {
    const { path, radius: runTubeRadius } = end.cutter.sleeves[i]!;
    const chains = stretchesAbout(path, end.position, about, runTubeRadius);
    return chains.flatMap((chain) => {
      const swept = (each: readonly Stretch[]): Shape =>
        sweptSolid(oc, keep, each, runTubeRadius, null, seamOff(tangentAt(each[0]!), seam));
      const filled = swept(chain);
      const passesBy = withBehind && cut.reaches && Math.abs(cut.axisOffset) + radius > runTubeRadius + ROUNDING;
      const [only] = chain;
      if (!passesBy) return [filled];
      if (chain.length > 1 || only!.piece.kind === 'arc') {
        const behind = behindBend(chain, runTubeRadius, end.direction, trims.greatest - trims.least);
        return [filled, ...behind.map(swept)];
      }
      return [behindRunTube(oc, keep, only!, runTubeRadius, end.direction, 2 * about), filled];
    });
  });
}

/**
 * What lies behind a straight run tube, as wide as it is, on the node's side: where the wall passes the run tube by, what the run tube has cut off
 * would hang on to the tube by that.
 */
function behindRunTube(
  oc: Kernel,
  keep: Keep,
  runTube: Stretch,
  radius: number,
  direction: Vec3,
  depth: number,
): Shape {
  const along = tangentAt(runTube);
  const ahead = normalize(rejectFrom(direction, along));
  const off = cross(ahead, along);
  const corner = addScaled(addScaled(addScaled(runTube.piece.from, along, runTube.from), off, -radius), ahead, -depth);
  return box(oc, keep, corner, along, off, [2 * radius, depth, runTube.to - runTube.from]);
}

/**
 * The same behind a bend, whose outline is no simple surface: the run tube once more, step by step towards the node's side, as far as the joint
 * reaches. No line is cut by that beyond where it leaves the run tube, and none that passes it by.
 */
function behindBend(chain: readonly Stretch[], radius: number, direction: Vec3, depth: number): Stretch[][] {
  const step = radius * STEP_BEHIND;
  return Array.from({ length: Math.ceil(depth / step) }, (_, i) => moved(chain, scale(direction, -step * (i + 1))));
}

/** The chain, moved. */
const moved = (chain: readonly Stretch[], by: Vec3): Stretch[] =>
  chain.map(({ piece, from, to }) => {
    const ends = { from: addScaled(piece.from, by, 1), to: addScaled(piece.to, by, 1) };
    const there =
      piece.kind === 'arc' ? { ...piece, ...ends, centre: addScaled(piece.centre, by, 1) } : { ...piece, ...ends };
    return { piece: there, from, to };
  });

/** Some direction that does not lie along `axis`. */
const seamOff = (axis: Vec3, wanted: Vec3 = [0.36, 0.48, 0.8]): Vec3 =>
  length(cross(axis, wanted)) > 0.2 * length(wanted) ? wanted : [0.8, -0.6, 0];
