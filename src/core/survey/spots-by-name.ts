/** Which measured points are the places that a cage goes by, as their names tell; a person may say otherwise. */
import type { PointRef } from '../job/reference.ts';
import type { Point } from '../job/kinds/point.ts';
import { AT_A_PILLAR, AT_B_PILLAR, BEHIND, SCREEN_FOOT, SCREEN_TOP, tells } from '../job/point-words.ts';
import { measuredPoints } from './measured-points.ts';
import type { Surveyed } from './network.ts';
import { SPOTS, type Spot } from './spots.ts';

/** Every one of these has to be in a name. */
const TELLING: Readonly<Record<Spot, readonly RegExp[]>> = {
  'floor-b': [/floor/u, AT_B_PILLAR],
  'belt-b': [/belt/u, AT_B_PILLAR],
  'roof-b': [/roof|rail/u, AT_B_PILLAR],
  tower: [/tower|turret/u, BEHIND],
  'screen-top': SCREEN_TOP,
  'screen-foot': SCREEN_FOOT,
  'floor-a': [/floor/u, AT_A_PILLAR],
};

/** None of these may: a front tower's rear face is no rear tower. */
const NOT: Readonly<Partial<Record<Spot, RegExp>>> = {
  tower: /front/u,
  'screen-top': BEHIND,
  'screen-foot': BEHIND,
};

/** The points that tell by their names that they are there, in their order. */
export const pointsTelling = (points: readonly Point[], spot: Spot): readonly Point[] =>
  points.filter(({ name }) => tells(name, TELLING[spot], NOT[spot]));

/** Of points that tell, the first that was measured on the left, else the first on the right; a place that none tells is left out. */
export function spotsByName(job: Surveyed): Readonly<Partial<Record<Spot, PointRef>>> {
  const points = measuredPoints(job);
  const found = SPOTS.flatMap((spot) => {
    const own = pointsTelling(points, spot);
    const best = own.find(({ position }) => position[1] > 0) ?? own.find(({ position }) => position[1] < 0);
    return best === undefined ? [] : [[spot, best.id] as const];
  });
  return Object.fromEntries(found);
}
