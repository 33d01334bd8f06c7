/**
 * An end that was cut beside what the frame would cut there now: the difference of the two trims on each of the 360 lines about the tube as it
 * lies, plus where the frame cuts deeper and steel is in the way. A straight tube can be slid along its axis: it is pushed up to end A, and what is
 * over or missing then stands at end B. A bent one lies where it lies. Lines that either cut does not reach say nothing.
 */
import { angleBetween, type Radians } from '../geometry/angle.ts';
import { addScaled, dot, normalize, rotateAbout, scale, subtract, type Vec3 } from '../geometry/vector.ts';
import { trimOn } from '../solve/end-cutter.ts';
import type { Cut, EndCutter, SolvedTube, TubeEnd } from '../solve/types.ts';

/** mm. Less over or missing at an end is filed off, or filled. Common practice. */
export const FITS = 0.5;

export interface Misfit {
  /** As EndMisfit, without what was left on the end to trim. */
  readonly long: number;
  readonly gap: number;
  readonly turned: Radians | null;
}

/** At end A and end B of a tube that is held, which `wanted` is as drawn; null where no line tells. */
export function misfits(tube: SolvedTube, wanted: SolvedTube): readonly [Misfit | null, Misfit | null] {
  const ranges = ([0, 1] as const).map((which) => rangeAt(tube.ends[which], wanted.ends[which]));
  const [a, b] = ranges;
  const slide = tube.bends.length === 0 && a != null && b != null ? a.most : 0;
  const misfit = (which: 0 | 1): Misfit | null => {
    const range = ranges[which];
    if (range == null) return null;
    const by = which === 0 ? -slide : slide;
    const [least, most] = [range.least + by, range.most + by];
    // Where all of it stands short there is nothing to grind.
    return { long: most, gap: Math.max(0, -least), turned: turnedAt(tube.ends[which], wanted.ends[which]) };
  };
  return [misfit(0), misfit(1)];
}

function rangeAt(end: TubeEnd, wanted: TubeEnd): { readonly least: number; readonly most: number } | null {
  const now = trimOn(cutterAt(end, wanted), end.cutter.section.outerDiameter / 2);
  let [least, most] = [Infinity, -Infinity];
  end.outer.forEach((trim, phi) => {
    const difference = now[phi]! - trim;
    if (difference < least) least = difference;
    if (difference > most) most = difference;
  });
  return least <= most ? { least, most } : null;
}

/** What the frame cuts with now, seen from the end where it lies. */
function cutterAt({ position, direction, reference }: TubeEnd, wanted: TubeEnd): EndCutter {
  const { cutter } = wanted;
  const bundle = { origin: position, direction, reference };
  if (cutter.plateNormal === null) return { ...cutter, bundle };
  const normal = normalize(cutter.plateNormal);
  const onPlane = addScaled(wanted.position, wanted.direction, cutter.rise);
  const rise = dot(normal, subtract(onPlane, position)) / dot(normal, direction);
  return { ...cutter, bundle, rise };
}

/** Between the run tubes of the first cut, then and now. */
function turnedAt(end: TubeEnd, wanted: TubeEnd): Radians | null {
  const [then, now] = [end.cuts[0], wanted.cuts[0]];
  if (then === undefined || now === undefined || then.against !== now.against) return null;
  const [one, other] = [axisOf(end, then), axisOf(wanted, now)];
  return Math.min(angleBetween(one, other), angleBetween(one, scale(other, -1)));
}

const axisOf = ({ direction, reference }: TubeEnd, { includedAngle, clocking }: Cut): Vec3 =>
  addScaled(
    scale(direction, Math.cos(includedAngle)),
    rotateAbout(reference, direction, clocking),
    Math.sin(includedAngle),
  );
