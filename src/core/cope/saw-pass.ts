/**
 * Where a hole saw stands to an end that it notches, and how deep it goes.
 *
 * The saw's axis crosses the branch's at `centre`, mm from the node along the branch into it: there the head swings about, so that
 * another angle leaves the centre where it is. Frame at that place: u along the branch into it, a towards the deep-bite side, b = u x a.
 * The axis runs along v = u cos al + a sin al, al the included angle, and passes the branch's axis at `aside` along b. On the deep-bite side it
 * leans back over the branch.
 */
import type { Radians } from '../geometry/angle.ts';
import { linePiece } from '../geometry/path.ts';
import type { Sleeve } from '../geometry/met-sleeve.ts';
import { add, addScaled, cross, distance, dot, rotateAbout, scale, subtract, type Vec3 } from '../geometry/vector.ts';
import { greatestBetween } from '../numerics/greatest-between.ts';
import { sleeveOf } from '../solve/end-cutter.ts';
import type { Cut, TubeEnd } from '../solve/types.ts';

/** What is set for one cut. */
export interface SawSetting {
  /** Of the saw, mm. */
  readonly diameter: number;
  readonly offSquare: Radians;
}

/** A straight run tube's axis in the frame of the end: see above. */
export interface SawPlace {
  /** mm from the node along the end's direction; negative beyond the node. */
  readonly centre: number;
  /** mm along b. */
  readonly aside: number;
}

const frameOf = ({ direction, reference }: TubeEnd, { clocking }: Cut) => {
  const deep = rotateAbout(reference, direction, clocking);
  return { direction, deep, across: cross(direction, deep) };
};

/** Where the run tube's straight crosses the end's axis. The cut must not be parallel to it. */
export function sawPlace(end: TubeEnd, cut: Cut): SawPlace {
  const { direction, deep } = frameOf(end, cut);
  const there = subtract(cut.landing, end.position);
  const along = dot(there, deep) / Math.sin(cut.includedAngle);
  return { centre: dot(there, direction) - along * Math.cos(cut.includedAngle), aside: -cut.axisOffset };
}

/** What a saw so set takes away, as a surface that cuts: an endless cylinder about the saw's axis. */
export function sawSleeve(end: TubeEnd, cut: Cut, { diameter, offSquare }: SawSetting): Sleeve {
  const { direction, deep, across } = frameOf(end, cut);
  const { centre, aside } = sawPlace(end, cut);
  const place: Vec3 = addScaled(addScaled(end.position, direction, centre), across, aside);
  const axis = add(scale(direction, Math.sin(offSquare)), scale(deep, Math.cos(offSquare)));
  const from = addScaled(place, axis, -diameter);
  const to = addScaled(place, axis, diameter);
  const path = { pieces: [linePiece(from, to, 0)], length: distance(from, to) };
  return sleeveOf(
    { path, section: { ...end.cutter.section, outerDiameter: diameter } },
    { landing: place, includedAngle: Math.PI / 2 - offSquare },
    end.position,
    end.cutter.section.outerDiameter / 2,
  );
}

/**
 * Where the line of the deep-bite side leaves the saw's round, mm from the node: s(0) of trade's formula with the setting's angle. There a
 * drill that leans over the tube touches first, where the axes meet: t along the saw is greatest on that line.
 */
export function touchOn(end: TubeEnd, cut: Cut, { diameter, offSquare }: SawSetting): number {
  const { centre, aside } = sawPlace(end, cut);
  const radius = end.cutter.section.outerDiameter / 2;
  return centre + (radius * Math.sin(offSquare) + Math.sqrt((diameter / 2) ** 2 - aside ** 2)) / Math.cos(offSquare);
}

/** Lines of the saw's cylinder that are looked at before the deepest and the shallowest are closed in on. */
const LINES = 720;
/** Radians. Of a saw, what is no more than this off its extreme shows nowhere. */
const CLOSED_IN = 1e-9;

/**
 * How far the saw travels from where its teeth first touch the tube to where they are through, mm; the tube is sawn off square `sawn`
 * mm from the node along its direction (the blank's end). Of the wall alone: a tube is hollow. Null where the saw passes the tube by.
 *
 * Each line of the saw's cylinder, parallel to its axis, runs through the tube from t1 to t2, the roots of a quadratic, as far as it
 * lies on the tube's side of the sawn end; through the bore it meets no wall.
 */
export function sawTravel(end: TubeEnd, cut: Cut, { diameter, offSquare }: SawSetting, sawn: number): number | null {
  const { outerDiameter, wall } = end.cutter.section;
  const { centre, aside } = sawPlace(end, cut);
  const [sine, cosine] = [Math.cos(offSquare), Math.sin(offSquare)];
  const [outer, bore] = [outerDiameter / 2, outerDiameter / 2 - wall];
  /** Along the line at psi round the saw: where it enters and leaves the round of radius rho; null where it passes by. */
  const within = (w: number, z: number, rho: number): readonly [number, number] | null => {
    const half = rho * rho - z * z;
    if (half < 0) return null;
    // The line is at a = w cos al + t sin al across the tube, and that has to be within the chord.
    const chord = Math.sqrt(half);
    return [(-chord - w * cosine) / sine, (chord - w * cosine) / sine];
  };
  const spanOf = (psi: number): readonly [number, number] | null => {
    const w = (diameter / 2) * Math.cos(psi);
    const z = aside + (diameter / 2) * Math.sin(psi);
    const round = within(w, z, outer);
    if (round === null) return null;
    // s = centre + t cos al - w sin al has to be beyond the sawn end.
    const least = sawn - centre + w * sine;
    const start = cosine < FLAT ? (least > 0 ? Infinity : -Infinity) : least / cosine;
    const leaves = round[1];
    let enters = Math.max(round[0], start);
    const hollow = within(w, z, bore);
    if (hollow !== null && enters > hollow[0] && enters < hollow[1]) enters = hollow[1];
    return enters < leaves ? [enters, leaves] : null;
  };
  const spans = Array.from({ length: LINES }, (_, i) => spanOf((2 * Math.PI * i) / LINES));
  const first = extreme(spans, (span) => span[0], spanOf, -1);
  const last = extreme(spans, (span) => span[1], spanOf, 1);
  return first === null || last === null ? null : last - first;
}

/** A sine below this is that of a saw set square. */
const FLAT = 1e-9;

/** The greatest (sense 1) or least (-1) of what is read of a span, over all psi. */
function extreme(
  spans: readonly (readonly [number, number] | null)[],
  read: (span: readonly [number, number]) => number,
  spanOf: (psi: number) => readonly [number, number] | null,
  sense: 1 | -1,
): number | null {
  let best = -1;
  spans.forEach((span, i) => {
    if (span !== null && (best < 0 || sense * read(span) > sense * read(spans[best]!))) best = i;
  });
  if (best < 0) return null;
  const height = (psi: number): number => {
    const span = spanOf(psi);
    return span === null ? -Infinity : sense * read(span);
  };
  const step = (2 * Math.PI) / LINES;
  // A saw that grazes the tube may meet it along this one line alone of those looked at.
  const closest = greatestBetween(height, (best - 1) * step, (best + 1) * step, CLOSED_IN);
  return sense * Math.max(sense * read(spans[best]!), closest);
}
