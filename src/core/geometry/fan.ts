/**
 * Parallel lines on a cylinder, by their angle phi about its axis. A line is
 * origin + rho (cos phi reference + sin phi (direction x reference)) + s direction; what is looked for on it is where it leaves
 * a surface as s grows.
 */
import type { Radians } from './angle.ts';
import type { Vec3 } from './vector.ts';

/** Where a bundle of lines starts from: unit vectors, reference square to direction. */
export interface Bundle {
  readonly origin: Vec3;
  readonly direction: Vec3;
  readonly reference: Vec3;
}

/** Some lines of a bundle: scratch that surface after surface writes into. A derivation looks at hundreds of fans. */
export interface Fan {
  readonly cosines: Float64Array;
  readonly sines: Float64Array;
  /** For each line the leaving crossing nearest the origin so far, mm along the direction; NaN before there is one. */
  readonly nearest: Float64Array;
  /** Where the line has surely not entered yet what it leaves there, mm along the direction; -Infinity where nobody knows. */
  readonly entered: Float64Array;
  /** No other stretch within a surface, of those found so far that might yet lie nearer, comes nearer the origin than this, mm. */
  readonly rival: Float64Array;
  /**
   * Of the stretches that go on through the end of a piece, where that is and where they have surely not begun yet: the farthest and the
   * nearest of them, mm. The piece that one leaves after that may not have been looked at.
   */
  readonly passedAt: Float64Array;
  readonly passedFrom: Float64Array;
  /** The number of the surface that `nearest` is on. */
  readonly by: Uint16Array;
  /** Where a line about here may touch a bend and no more; null where nobody asks. */
  readonly grazes: Graze[] | null;
}

/** On the line of this number, where the surface of this number is nearly touched: mm along the line. */
export interface Graze {
  readonly line: number;
  readonly surface: number;
  readonly s: number;
}

/** A line that only touches a surface, at s. */
export interface Touched {
  readonly phi: Radians;
  readonly s: number;
}

/** Where a line leaves a surface, and how the surface lies there: N is its unit normal, outwards. */
export interface Leaving {
  readonly s: number;
  /** N . direction, from 0 where the line only touches to 1. */
  readonly ahead: number;
  /** N . (d place / d phi), mm. The crossing moves by ds/dphi = -around / ahead. */
  readonly around: number;
  /** Half the stretch of the line within the surface, mm: good only where that is short, a few hundredths at most. */
  readonly half: number;
}

/** Lines at these angles, with nothing met yet. */
export const linesAt = (angles: readonly Radians[]): Fan => ({
  cosines: Float64Array.from(angles, Math.cos),
  sines: Float64Array.from(angles, Math.sin),
  nearest: new Float64Array(angles.length),
  entered: new Float64Array(angles.length),
  rival: new Float64Array(angles.length),
  passedAt: new Float64Array(angles.length),
  passedFrom: new Float64Array(angles.length),
  by: new Uint16Array(angles.length),
  grazes: null,
});

/**
 * Notes on line `k` that it leaves a surface of that number at `s` mm, and has not entered it before `entered`. A stretch that
 * ends behind the origin is as near as its end; one that ends ahead may be nearer than that, and so a rival of one whose end is.
 */
export function keepNearest(fan: Fan, k: number, s: number, entered: number, surface: number): void {
  const { nearest, rival } = fan;
  const held = nearest[k]!;
  if (Math.abs(held) <= Math.abs(s)) {
    if (s > 0 && entered < rival[k]!) rival[k] = entered;
    return;
  }
  if (held > 0 && fan.entered[k]! < rival[k]!) rival[k] = fan.entered[k]!;
  nearest[k] = s;
  fan.entered[k] = entered;
  fan.by[k] = surface;
}

/** Notes on line `k` that a stretch that has not begun before `entered` goes on through the end of its piece at `s`, mm. */
export function keepPassed({ nearest, passedAt, passedFrom }: Fan, k: number, s: number, entered: number): void {
  if (entered >= Math.abs(nearest[k]!)) return;
  if (s > passedAt[k]!) passedAt[k] = s;
  if (entered < passedFrom[k]!) passedFrom[k] = entered;
}
