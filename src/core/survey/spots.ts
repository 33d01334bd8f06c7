/** Places of the car that a cage goes by: which layout goes by which, and about where each is. */
import type { Vec3 } from '../geometry/vector.ts';

/** The base layouts, as rule books draw them. */
export const LAYOUTS = ['roll-bar', 'six-point', 'two-hoops', 'roof-ring', 'side-hoops'] as const;
export type LayoutName = (typeof LAYOUTS)[number];

/** Each on the left: B stands at the hoop, A at the windscreen's pillar. */
export const SPOTS = ['floor-b', 'belt-b', 'roof-b', 'tower', 'screen-top', 'screen-foot', 'floor-a'] as const;
export type Spot = (typeof SPOTS)[number];

/** Those of a roll bar. */
const BEHIND: readonly Spot[] = ['floor-b', 'belt-b', 'roof-b', 'tower'];

/** The places that the layout goes by. */
export const spotsOf = (layout: LayoutName): readonly Spot[] => (layout === 'roll-bar' ? BEHIND : SPOTS);

/** Where each is on an ordinary closed car, mm from the floor at the hoop and the centre plane (common practice). */
export const USUAL: Readonly<Record<Spot, Vec3>> = {
  'floor-b': [0, 635, 0],
  'belt-b': [0, 672.5, 635],
  'roof-b': [0, 527.5, 1125],
  tower: [-800, 482.5, 520],
  'screen-top': [560, 507.5, 1080],
  'screen-foot': [1105, 635, 675],
  'floor-a': [990, 590, 25],
};
