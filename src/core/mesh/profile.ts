/**
 * Reading an end's trim profile for drawing: its value at any angle, and the angles that the drawn rim must keep.
 * A profile holds the trim at 0, 1 ... 359 degrees, and what it comes to between them at its tip and throat; where no run tube is
 * reached the tube is drawn to its tip.
 */
import { toDegrees } from '../geometry/angle.ts';
import type { RimPlace } from '../geometry/rim-search.ts';

export interface Profile {
  readonly whole: Float64Array;
  /** Between whole degrees, ascending. */
  readonly between: readonly { readonly degrees: number; readonly trim: number }[];
}

/** No two lines of a rim stand nearer to one another than this, degrees. */
const APART = 0.01;

/** The trims at whole degrees, NaN where none is reached, with `places` of the same curve, and `tip` in place of NaN. */
export function profileOf(trims: ArrayLike<number>, places: readonly RimPlace[], tip: number): Profile {
  const whole = Float64Array.from(trims, (trim) => (Number.isNaN(trim) ? tip : trim));
  const between: Profile['between'][number][] = [];
  for (const { phi, s } of places) {
    const degrees = (toDegrees(phi) + 360) % 360;
    if (Math.abs(degrees - Math.round(degrees)) < APART) whole[Math.round(degrees) % 360] = s;
    else if (!between.some((each) => Math.abs(each.degrees - degrees) < APART)) between.push({ degrees, trim: s });
  }
  return { whole, between: between.toSorted((a, b) => a.degrees - b.degrees) };
}

/** Degrees. A hair's breadth off a known place is that place: a frame turned through bends comes back rounded. */
const SAME_PLACE = 1e-6;

/** Value at `degrees` (any real number), linear between the two nearest places that are known. */
export function trimAt({ whole, between }: Profile, degrees: number): number {
  const count = whole.length;
  const turned = ((degrees % count) + count) % count;
  const nearest = Math.round(turned);
  if (Math.abs(turned - nearest) < SAME_PLACE) return whole[nearest % count]!;
  const floor = Math.floor(turned);
  let below = { degrees: floor, trim: whole[floor]! };
  let above = { degrees: floor + 1, trim: whole[(floor + 1) % count]! };
  for (const place of between) {
    if (Math.abs(place.degrees - turned) < SAME_PLACE) return place.trim;
    if (place.degrees > below.degrees && place.degrees < turned) below = place;
    if (place.degrees < above.degrees && place.degrees > turned) above = place;
  }
  const t = (turned - below.degrees) / (above.degrees - below.degrees);
  return below.trim * (1 - t) + above.trim * t;
}

/** Sharper than this turn of slope between neighbouring degrees is a kink: mm per degree. */
const KINK = 0.08;

/**
 * Degrees where the profile has a tip, a throat or a kink: the shape's corners, which even spacing would shave off. Whole, but
 * for the places between that are known. A flat profile has none.
 */
export function sharpDegrees({ whole: profile, between }: Profile): readonly number[] {
  const count = profile.length;
  const sharp = between.map(({ degrees }) => degrees);
  const bendAt = (i: number): number => {
    const before = profile[(i - 1 + count) % count]!;
    const after = profile[(i + 1) % count]!;
    return after - 2 * profile[i % count]! + before;
  };
  for (let i = 0; i < count; i += 1) {
    const rise = profile[i]! - profile[(i - 1 + count) % count]!;
    const fall = profile[(i + 1) % count]! - profile[i]!;
    const extreme = rise * fall < 0 || (rise === 0) !== (fall === 0);
    const here = Math.abs(bendAt(i));
    const kink = here > KINK && here >= Math.abs(bendAt(i - 1 + count)) && here >= Math.abs(bendAt(i + 1));
    if (extreme || kink) sharp.push(i);
  }
  return sharp;
}
