/** How far forward the main hoop reaches: a driver sits ahead of it. */
import { isRole } from '../job/role.ts';
import type { Frame } from '../solve/types.ts';

/** mm, the car's x of the front of its wall, by its foremost corner; null without a main hoop. */
export function frontOfHoop({ bars }: Pick<Frame, 'bars'>): number | null {
  const hoops = [...bars.values()].filter(({ member }) => isRole(member, 'main-hoop'));
  const fronts = hoops.flatMap(({ corners, section }) => corners.map(([x]) => x + section.outerDiameter / 2));
  return fronts.length === 0 ? null : Math.max(...fronts);
}
