/** A turn about the tube as a small clock face: what it is counted from stands at the top, clockwise as one looks along the tube. */
import type { Radians } from '../../core/geometry/angle.ts';
import type { Mark, Place2 } from '../drawing/types.ts';
import { around, arc, arrowhead, FINE, FIRM, HAIR, stroke } from './ink.ts';

const TOP = Math.PI / 2;

/** `clockwise` in (-pi, pi]. */
export function dial(centre: Place2, radius: number, clockwise: Radians): readonly Mark[] {
  const hand = TOP - clockwise;
  const [from, to] = clockwise > 0 ? [hand, TOP] : [TOP, hand];
  const sweep = Math.abs(clockwise) < 0.02 ? [] : [arc(centre, radius * 0.5, from, to, HAIR)];
  return [
    arc(centre, radius, 0, 2 * Math.PI, FINE),
    ...[0, 1, 2, 3].map((quarter) =>
      stroke([around(centre, radius * 0.86, quarter * TOP), around(centre, radius, quarter * TOP)], FINE),
    ),
    stroke([centre, around(centre, radius, TOP)], { ...HAIR, dash: [0.8, 0.6] }),
    ...sweep,
    stroke([centre, around(centre, radius * 0.7, hand)], FIRM),
    arrowhead(around(centre, radius * 0.98, hand), hand, radius * 0.36),
  ];
}
