/** Points in space, by quaternions: a second way to turn things, to set beside the program's. */
export type Triple = readonly [number, number, number];

export const axis = (x: number, y: number, z: number): Triple => [x, y, z];
export const add = (a: Triple, b: Triple): Triple => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const less = (a: Triple, b: Triple): Triple => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const scaled = (a: Triple, k: number): Triple => [k * a[0], k * a[1], k * a[2]];
export const inner = (a: Triple, b: Triple): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const outer = (a: Triple, b: Triple): Triple => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
export const apart = (a: Triple, b: Triple): number => Math.hypot(...less(a, b));
export const unit = (a: Triple): Triple => scaled(a, 1 / Math.hypot(...a));

/** v turned right-hand about the unit vector u: q v q*, with v + 2 w (q x v) + 2 q x (q x v). */
export function rotated(v: Triple, u: Triple, angle: number): Triple {
  const q = scaled(u, Math.sin(angle / 2));
  const t = scaled(outer(q, v), 2);
  return add(add(v, scaled(t, Math.cos(angle / 2))), outer(q, t));
}

/**
 * Whether two rows of points are one shape, moved and turned but not mirrored: the greatest distance left between them once
 * their first points and the planes of three of them lie on one another.
 */
export function unlike(a: readonly Triple[], b: readonly Triple[]): number {
  const frameOf = (points: readonly Triple[], [i, j, k]: readonly number[]): readonly Triple[] => {
    const x = unit(less(points[j!]!, points[i!]!));
    const z = unit(outer(x, less(points[k!]!, points[i!]!)));
    return [x, outer(z, x), z];
  };
  const three = widest(a);
  const [fa, fb] = [frameOf(a, three), frameOf(b, three)];
  return Math.max(
    ...a.map((p, n) => {
      const own = less(p, a[three[0]!]!);
      const laid = fb.reduce((sum: Triple, e, i) => add(sum, scaled(e, inner(own, fa[i]!))), b[three[0]!]!);
      return apart(laid, b[n]!);
    }),
  );
}

/** Three of the points that span a wide triangle. */
function widest(points: readonly Triple[]): readonly number[] {
  const far = (measure: (p: Triple) => number) =>
    points.reduce((best, p, i) => (measure(p) > measure(points[best]!) ? i : best), 0);
  const j = far((p) => apart(p, points[0]!));
  const x = unit(less(points[j]!, points[0]!));
  const k = far((p) => Math.hypot(...outer(x, less(p, points[0]!))));
  return [0, j, k];
}
