/** Which measured points are the places that a cage goes by, as their names tell; a person may say otherwise. */
import type { PointRef } from '../../job/reference.ts';
import type { Point } from '../../job/kinds/point.ts';
import { SPOTS, type Spot } from './asked.ts';

/** Every one of these has to be in a name. */
const TELLING: Readonly<Record<Spot, readonly RegExp[]>> = {
  'floor-b': [/floor/u, /\bb[- ]?pillar|hoop/u],
  'belt-b': [/belt/u, /\bb[- ]?pillar|hoop/u],
  'roof-b': [/roof|rail/u, /\bb[- ]?pillar|hoop/u],
  tower: [/tower|turret/u, /rear|back/u],
  'screen-top': [/wind ?s(?:creen|hield)/u, /top|upper/u],
  'screen-foot': [/wind ?s(?:creen|hield)/u, /lower|foot|bottom/u],
  'floor-a': [/floor/u, /\ba[- ]?pillar|front/u],
};

/** None of these may: a front tower's rear face is no rear tower, and the rear window is no windscreen. */
const NOT: Readonly<Partial<Record<Spot, RegExp>>> = {
  tower: /front/u,
  'screen-top': /rear|back/u,
  'screen-foot': /rear|back/u,
};

/** Of points that tell, the first on the left, else the first on the right; a place that none tells is left out. */
export function spotsByName(points: readonly Point[]): Readonly<Partial<Record<Spot, PointRef>>> {
  const found = SPOTS.flatMap((spot) => {
    const own = points.filter(({ name }) => {
      const text = name.toLowerCase();
      return TELLING[spot].every((word) => word.test(text)) && !NOT[spot]?.test(text);
    });
    const best = own.find(({ position }) => position[1] > 0) ?? own.find(({ position }) => position[1] < 0);
    return best === undefined ? [] : [[spot, best.id] as const];
  });
  return Object.fromEntries(found);
}
