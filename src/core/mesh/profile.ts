/**
 * Reading an end's trim profile for drawing: its value at any angle, and the angles that the drawn rim must keep.
 * A profile holds the trim at 0, 1 ... 359 degrees; NaN where no run tube is reached, and there the tube is drawn to
 * its tip.
 */

/** Trim with every unreached line set to `tip`. */
export const reachedOrTip = (profile: ArrayLike<number>, tip: number): Float64Array =>
  Float64Array.from(profile, (trim) => (Number.isNaN(trim) ? tip : trim));

/** Value at `degrees` (any real number), linear between the two nearest whole degrees. */
export function trimAt(profile: ArrayLike<number>, degrees: number): number {
  const count = profile.length;
  const turned = ((degrees % count) + count) % count;
  // A hair's breadth off a whole degree is that degree: a frame turned through bends comes back rounded.
  const nearest = Math.round(turned);
  if (Math.abs(turned - nearest) < 1e-6) return profile[nearest % count]!;
  const below = Math.floor(turned);
  const t = turned - below;
  return profile[below]! * (1 - t) + profile[(below + 1) % count]! * t;
}

/** Sharper than this turn of slope between neighbouring degrees is a kink: mm per degree. */
const KINK = 0.08;

/**
 * Whole degrees where the profile has a tip, a throat or a kink: the shape's corners, which even spacing would shave off.
 * A flat profile has none.
 */
export function sharpDegrees(profile: ArrayLike<number>): readonly number[] {
  const count = profile.length;
  const sharp: number[] = [];
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
