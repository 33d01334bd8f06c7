/** The flat sheet's outline, on the corner's plane: inwards along leg 2, past the corner, outwards along leg 1, and straight across to leg 2 (the free edge). */
import type { Gusset } from '../job/kinds/gusset.ts';
import { linesThrough, type Edge, type Place2 } from './edges.ts';
import { onLeg2, type Face } from './face.ts';

/** Where the free edge begins and ends: leg 1's length and leg 2's from where the tubes' lines meet. */
export const freeEdge = (corner: Place2, angle: number, { between: [a, b] }: Gusset): readonly [Place2, Place2] => [
  [corner[0] + a.leg, corner[1]],
  onLeg2(corner, angle, b.leg),
];

/** Counter-clockwise, from leg 1 on; mm. */
export function flatOutline(face: Face, angle: number, gusset: Gusset): readonly Edge[] {
  const [one, two] = freeEdge(face.corner, angle, gusset);
  const sides = linesThrough([face.begins[0], one, two, face.begins[1]]);
  return face.between === null ? sides : [...sides, face.between];
}
