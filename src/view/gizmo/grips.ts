/**
 * The handles of a selected node on the screen: bars along an axis and plates in a plane, of one size at any zoom.
 * Because the view is orthographic, a drag in pixels is a displacement in mm by one small linear solve.
 */
import { addScaled, dot, X_AXIS, Y_AXIS, Z_AXIS, type Vec3 } from '../../core/geometry/vector.ts';
import type { Freedom } from '../../core/shape/free-directions.ts';
import type { Projection } from '../camera/projection.ts';

export interface Grip {
  readonly key: string;
  readonly kind: 'bar' | 'plate';
  /** One unit direction of a bar, two of a plate. */
  readonly along: readonly Vec3[];
  /** A bar that slides both ways has an end on either side of the node. */
  readonly bothWays: boolean;
}

const AXES = { x: X_AXIS, y: Y_AXIS, z: Z_AXIS } as const;
const bar = (key: keyof typeof AXES): Grip => ({ key, kind: 'bar', along: [AXES[key]], bothWays: false });
const plate = (key: string, u: Vec3, v: Vec3): Grip => ({ key, kind: 'plate', along: [u, v], bothWays: false });

const SPACE_GRIPS: readonly Grip[] = [
  bar('x'),
  bar('y'),
  bar('z'),
  plate('xy', X_AXIS, Y_AXIS),
  plate('yz', Y_AXIS, Z_AXIS),
  plate('xz', X_AXIS, Z_AXIS),
];

export const gripsOf = (freedom: Freedom): readonly Grip[] =>
  freedom.free === 'space'
    ? SPACE_GRIPS.filter(
        ({ kind, along }) =>
          (kind === 'bar' || freedom.single !== true) &&
          along.every((direction) => freedom.open.some((axis) => direction[axis] !== 0)),
      )
    : [{ key: 'line', kind: 'bar', along: [freedom.direction], bothWays: true }];

/** Pixels from the node: where a bar begins and ends, and where a plate's corners lie along both its directions. */
export const BAR = { from: 20, to: 92 } as const;
export const PLATE = { from: 36, to: 60 } as const;

/** A bar that points at the eye, or a plate seen on edge, cannot be dragged and is not shown. */
const LEAST_BAR = 0.3;
const LEAST_PLATE = 0.25;

interface Pixels {
  readonly x: number;
  readonly y: number;
}

/** A unit direction on the screen, y downwards: shorter than 1 where it points towards the eye. */
const onScreen = (direction: Vec3, view: Projection): Pixels => ({
  x: dot(direction, view.right),
  y: -dot(direction, view.up),
});

export function isUsable(grip: Grip, view: Projection): boolean {
  const [u, v] = grip.along.map((direction) => onScreen(direction, view)) as [Pixels, Pixels | undefined];
  if (v === undefined) return Math.hypot(u.x, u.y) > LEAST_BAR;
  return Math.abs(u.x * v.y - u.y * v.x) > LEAST_PLATE;
}

/** Displacement in mm, along the grip's directions, for a drag of so many pixels. */
export function displacement(grip: Grip, view: Projection, dx: number, dy: number): Vec3 {
  const [u, v] = grip.along.map((direction) => onScreen(direction, view)) as [Pixels, Pixels | undefined];
  const nowhere: Vec3 = [0, 0, 0];
  if (v === undefined) {
    const mm = (dx * u.x + dy * u.y) / (u.x * u.x + u.y * u.y) / view.pixelsPerMm;
    return addScaled(nowhere, grip.along[0]!, mm);
  }
  const area = (u.x * v.y - u.y * v.x) * view.pixelsPerMm;
  return addScaled(
    addScaled(nowhere, grip.along[0]!, (dx * v.y - dy * v.x) / area),
    grip.along[1]!,
    (dy * u.x - dx * u.y) / area,
  );
}

/** The usable grip under a pointer that may miss by `reach` pixels; bars before plates where both are near. */
export function pickGrip(
  grips: readonly Grip[],
  place: Vec3,
  view: Projection,
  x: number,
  y: number,
  reach: number,
): Grip | null {
  const middle = view.toScreen(place);
  const [px, py] = [x - middle.x, y - middle.y];
  let nearest: { grip: Grip; away: number } | null = null;
  for (const grip of grips) {
    if (!isUsable(grip, view)) continue;
    const away = grip.kind === 'bar' ? awayFromBar(grip, view, px, py) : awayFromPlate(grip, view, px, py);
    if (away <= reach && (nearest === null || away < nearest.away)) nearest = { grip, away };
  }
  return nearest?.grip ?? null;
}

function awayFromBar(grip: Grip, view: Projection, px: number, py: number): number {
  const u = onScreen(grip.along[0]!, view);
  const t = (px * u.x + py * u.y) / (u.x * u.x + u.y * u.y);
  const size = grip.bothWays ? Math.abs(t) : t;
  const kept = Math.min(BAR.to + 6, Math.max(BAR.from, size)) * (grip.bothWays && t < 0 ? -1 : 1);
  return Math.max(0, Math.hypot(px - kept * u.x, py - kept * u.y) - 6);
}

/** A pixel more than a bar, so that at a plate's edge beside a bar the bar wins. */
function awayFromPlate(grip: Grip, view: Projection, px: number, py: number): number {
  const [u, v] = grip.along.map((direction) => onScreen(direction, view)) as [Pixels, Pixels];
  const area = u.x * v.y - u.y * v.x;
  const beyond = (t: number): number => Math.max(0, PLATE.from - t, t - PLATE.to);
  return 1 + Math.hypot(beyond((px * v.y - py * v.x) / area), beyond((py * u.x - px * u.y) / area));
}
