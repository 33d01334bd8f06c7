/**
 * Parallel lines on a cylinder, by their angle phi about its axis. A line is
 * origin + rho (cos phi reference + sin phi (direction x reference)) + s direction; what is looked for on it is the place
 * nearest s = 0 where it leaves a surface as s grows.
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
  /** The number of the surface that it is on. */
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

/** The same lines followed along the direction, and followed backwards, where phi runs the other way about. */
export interface Lines {
  readonly forth: Fan;
  readonly back: Fan;
}

/** Lines at these angles, with nothing met yet. */
export function linesAt(angles: readonly Radians[]): Lines {
  const fan = (sense: 1 | -1): Fan => ({
    cosines: Float64Array.from(angles, Math.cos),
    sines: Float64Array.from(angles, (phi) => sense * Math.sin(phi)),
    nearest: new Float64Array(angles.length),
    by: new Uint16Array(angles.length),
    grazes: null,
  });
  return { forth: fan(1), back: fan(-1) };
}

/** Notes on line `k` a crossing at `s` mm with a surface of that number, if none nearer the start is noted. */
export function keepNearest(nearest: Float64Array, by: Uint16Array, k: number, s: number, surface: number): void {
  if (Math.abs(nearest[k]!) <= Math.abs(s)) return;
  nearest[k] = s;
  by[k] = surface;
}
