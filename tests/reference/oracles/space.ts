/**
 * The few sums of vectors that the oracles need, written out here so that an error in the program's own vectors cannot
 * hide in the answers it is checked against.
 */
export type Triple = readonly [number, number, number];

export const sum = (a: Triple, b: Triple): Triple => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const difference = (a: Triple, b: Triple): Triple => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const times = (k: number, a: Triple): Triple => [k * a[0], k * a[1], k * a[2]];
/** a + k b: where one comes to after going k along b from a. */
export const along = (a: Triple, b: Triple, k: number): Triple => [a[0] + k * b[0], a[1] + k * b[1], a[2] + k * b[2]];
export const inner = (a: Triple, b: Triple): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const outer = (a: Triple, b: Triple): Triple => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
/** The plain root: Math.hypot takes ten times as long, and nothing here is so large or so small that its square is not a number. */
export const size = (a: Triple): number => Math.sqrt(inner(a, a));
export const unit = (a: Triple): Triple => times(1 / size(a), a);
/** Part of a square to the unit vector u. */
export const square = (a: Triple, u: Triple): Triple => along(a, u, -inner(a, u));

/** The direction at `degrees` about u, right-hand, counted from the unit vector `zero` that stands square to u. */
export function around(u: Triple, zero: Triple, degrees: number): Triple {
  const angle = (degrees * Math.PI) / 180;
  return sum(times(Math.cos(angle), zero), times(Math.sin(angle), outer(u, zero)));
}

/** Some unit vector square to `axis`; which one is of no account. */
export function anySquare(axis: Triple): Triple {
  return unit(outer(axis, Math.abs(axis[0]) < 0.6 ? [1, 0, 0] : [0, 1, 0]));
}
