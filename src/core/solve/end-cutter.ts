/**
 * What an end is cut by: run tubes, a plate, or a square saw; and the trim that it leaves on a surface of some radius about the
 * tube's axis, at whole degrees and exactly at its extremes.
 */
import { wrapHalfTurn, type Radians } from '../geometry/angle.ts';
import type { Bundle } from '../geometry/fan.ts';
import { edgeOf, type RimPlace } from '../geometry/rim-search.ts';
import { rimOf, type Extremes } from '../geometry/rim.ts';
import { metBy, type Sleeve } from '../geometry/met-sleeve.ts';
import { COSINES, GENERATORS, SINES, trimAt, trimBySleeves } from '../geometry/sleeve.ts';
import { ANGLE_ROUNDING } from '../geometry/tolerance.ts';
import { cross, distance, dot, normalize, rotateAbout, type Vec3 } from '../geometry/vector.ts';
import { meanOfTrim } from './amount.ts';
import type { Neighbour } from './meetings.ts';
import type { Cut, EndCutter } from './types.ts';

/** The run tube as the surface that cuts a branch of that radius (mm) whose end stands at `position`. */
export const sleeveOf = (
  runTube: Pick<Neighbour, 'path' | 'section'>,
  cut: Pick<Cut, 'landing' | 'includedAngle'>,
  position: Vec3,
  branchRadius: number,
): Sleeve => ({
  path: runTube.path,
  radius: runTube.section.outerDiameter / 2,
  reach: jointReach(cut, runTube.section.outerDiameter / 2, position, branchRadius),
});

/**
 * The trim at phi = turn, 1 degree + turn ... 359 degrees + turn on the surface of radius `rho` about the tube's axis: mm from
 * the node along the end's direction, NaN where nothing reaches. With no turn and the outer radius it is the profile itself.
 */
export function trimOn(
  { bundle, plateNormal, rise, sleeves }: EndCutter,
  rho: number,
  turn: Radians = 0,
): Float64Array {
  const turned = turn === 0 ? bundle : { ...bundle, reference: rotateAbout(bundle.reference, bundle.direction, turn) };
  if (plateNormal !== null) return planeTrim(turned, plateNormal, rise, rho);
  return sleeves.length === 0 ? new Float64Array(GENERATORS) : trimBySleeves(sleeves, turned, rho);
}

/** The same on the one line at phi. */
export const trimOnLine = (cutter: EndCutter, rho: number, phi: Radians): number => trimLine(cutter, rho)(phi);

/** The same for whoever asks for many lines. */
export function trimLine({ bundle, plateNormal, rise, sleeves }: EndCutter, rho: number): (phi: Radians) => number {
  if (plateNormal !== null) {
    const lean = planeLean(bundle, plateNormal);
    return (phi) => (lean === null ? NaN : rise + rho * (lean[0] * Math.cos(phi) + lean[1] * Math.sin(phi)));
  }
  if (sleeves.length === 0) return () => 0;
  const met = metBy(sleeves, bundle, rho);
  return (phi) => {
    let farthest = NaN;
    for (const each of met) {
      const trim = trimAt(each, phi, NaN);
      if (!(trim <= farthest) && !Number.isNaN(trim)) farthest = trim;
    }
    return farthest;
  };
}

export interface CutCurve extends Extremes {
  readonly trim: Float64Array;
  /** For each sleeve, whether any whole degree of the first radius reaches it. */
  readonly reached: readonly boolean[];
}

/** The trim at whole degrees, and the extremes of it everywhere; of several radii the greater trim counts. */
export function cutCurve({ bundle, plateNormal, rise, sleeves }: EndCutter, radii: readonly number[]): CutCurve {
  if (plateNormal !== null) return { ...planeCurve(bundle, plateNormal, rise, radii), reached: [] };
  if (sleeves.length === 0) {
    const level = { phi: 0, s: 0 };
    return { trim: new Float64Array(GENERATORS), lows: [level], high: level, passedBy: false, reached: [] };
  }
  return rimOf(radii.flatMap((rho) => metBy(sleeves, bundle, rho)));
}

/** Mean of the trim round the surface of radius `rho`, mm: what is cut off, where `tip` is the tube's. */
export function meanTrimOn(cutter: EndCutter, rho: number, tip: number | null): number {
  return meanOfTrim(trimOn(cutter, rho), tip, (reached, passed) => {
    const [from, to] = [(reached * Math.PI) / 180, (passed * Math.PI) / 180];
    const { phi, s } = edgeBetween(cutter, [rho], from, to);
    return { degree: reached + (wrapHalfTurn(phi - from) * 180) / Math.PI, s };
  });
}

/** Where the cut line ends between a phi where it is and one where nothing reaches, a degree on at most. */
export const edgeBetween = (
  { bundle, sleeves }: EndCutter,
  radii: readonly number[],
  reached: Radians,
  passed: Radians,
): RimPlace =>
  edgeOf(
    radii.flatMap((rho) => metBy(sleeves, bundle, rho)),
    reached,
    passed,
  );

/**
 * How far from the node, along the branch, its walls meet a run tube at this joint; beyond that it is another place of the run tube. No
 * straight one is met farther on: within (ra cos al + rb) / sin al of the axes' closest approach, and that is from the node by at most
 * their distance / sin al.
 */
const jointReach = (
  { landing, includedAngle }: Pick<Cut, 'landing' | 'includedAngle'>,
  runTubeRadius: number,
  position: Vec3,
  branchRadius: number,
): number =>
  (branchRadius * Math.cos(includedAngle) + runTubeRadius + distance(position, landing)) / Math.sin(includedAngle);

/** How a plane leans: where, with the axis at 0, it lies at phi = 0 and at a quarter turn, a mm from the axis: mm along; null where it lies along. */
function planeLean({ direction, reference }: Bundle, normal: Vec3): readonly [number, number] | null {
  const n = normalize(normal);
  const along = dot(direction, n);
  if (Math.abs(along) <= ANGLE_ROUNDING) return null;
  return [-dot(reference, n) / along, -dot(cross(direction, reference), n) / along];
}

/** Cut by the plane that the axis meets `rise` mm from the origin; NaN all round where the plane lies along the tube and never cuts it. */
function planeTrim(bundle: Bundle, normal: Vec3, rise: number, rho: number): Float64Array {
  const lean = planeLean(bundle, normal);
  if (lean === null) return new Float64Array(GENERATORS).fill(NaN);
  const [c, s] = [rho * lean[0], rho * lean[1]];
  return COSINES.map((cosine, k) => rise + c * cosine + s * SINES[k]!);
}

function planeCurve(
  bundle: Bundle,
  normal: Vec3,
  rise: number,
  radii: readonly number[],
): Extremes & { readonly trim: Float64Array } {
  const trims = radii.map((rho) => planeTrim(bundle, normal, rise, rho));
  const trim = trims.reduce((greater, each) => greater.map((s, k) => Math.max(s, each[k]!)));
  const lean = planeLean(bundle, normal);
  if (lean === null) return { trim, lows: [], high: null, passedBy: true };
  const steep = Math.hypot(...lean);
  const phi = Math.atan2(lean[1], lean[0]);
  // Not even by rounding within what is listed.
  const low = trim.reduce((least, s) => Math.min(least, s), rise - steep * Math.min(...radii));
  const high = trim.reduce((most, s) => Math.max(most, s), rise + steep * Math.max(...radii));
  return { trim, lows: [{ phi: wrapHalfTurn(phi + Math.PI), s: low }], high: { phi, s: high }, passedBy: false };
}
