/**
 * A gusset's face: where a plane that runs beside the two axes, so high over the corner's own, meets the tubes. A straight tube of radius r is cut by a plane along it at
 * height h over its axis in lines sqrt(r^2 - h^2) from that; its bend of centreline radius R, in the bend's plane, in an arc of R - sqrt(r^2 - h^2) on the inside.
 * The two lines meet in the face's corner, at x = (b + a cos t) / sin t and y = a, a and b their distances from the axes and t the angle between the legs.
 */
import type { Corner } from './corner.ts';
import type { Edge, Place2 } from './edges.ts';

/** The tubes' edge on a face: along leg 2 inwards and along leg 1 outwards again, without the free edge. */
export interface Face {
  /** Of each tube's line from its axis. */
  readonly off: readonly [number, number];
  /** Where the lines meet. */
  readonly corner: Place2;
  /** What lies between the two lines: nothing, the straight that the relief leaves, or the bend's arc; from leg 2 to leg 1. */
  readonly between: Edge | null;
  /** Where the two lines begin, on leg 1 and on leg 2: the corner itself, beside the relief, or at the bend's tangents. */
  readonly begins: readonly [Place2, Place2];
}

/** At this height over the corner's plane, mm; null where the plane passes a tube by. */
export function faceAt(corner: Corner, relief: number, z: number): Face | null {
  const off = corner.sides.map(({ radius, height }) => Math.sqrt(radius ** 2 - (z - height) ** 2)) as [number, number];
  if (off.some(Number.isNaN)) return null;
  const { angle, bend } = corner;
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const at: Place2 = [(off[1] + off[0] * c) / s, off[0]];
  if (bend !== null) {
    const centre: Place2 = [bend.setBack, bend.radius];
    const radius = bend.radius - off[0];
    const between: Edge = { kind: 'arc', centre, radius, from: angle + Math.PI / 2, to: 1.5 * Math.PI };
    const begins = [
      [bend.setBack, off[0]],
      [centre[0] - radius * s, centre[1] + radius * c],
    ] as const;
    return { off, corner: at, between, begins };
  }
  const begins = [[at[0] + relief, at[1]], onLeg2(at, angle, relief)] as const;
  const between: Edge | null = relief === 0 ? null : { kind: 'line', from: begins[1], to: begins[0] };
  return { off, corner: at, between, begins };
}

/** The place so far along leg 2 from the corner, mm. */
export const onLeg2 = ([x, y]: Place2, angle: number, along: number): Place2 => [
  x + along * Math.cos(angle),
  y + along * Math.sin(angle),
];
