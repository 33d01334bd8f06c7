/**
 * How much of the car a foot stands on, and what it weighs. A plate touches with its face, less its holes; of a kinked one the two flat parts,
 * for the bend stands off the sharp line of the car. A box is open below: it touches with the foot of its walls, a ring that is welded all
 * round; what it covers is its whole size.
 */
import { kinkAxis, kinkSetBack } from '../job/kinds/kink.ts';
import type { Foot } from '../job/kinds/foot.ts';
import { STEEL_DENSITY } from '../solve/amount.ts';
import { blanksOf, wallOf, type Blank } from './blanks.ts';

/** mm2, of what touches the car. */
export function contactArea(foot: Foot): number {
  const [long, wide] = foot.size;
  if (foot.kind === 'box') {
    const wall = wallOf(foot);
    return long * wide - (long - 2 * wall) * (wide - 2 * wall);
  }
  const { kink } = foot;
  const bent = kink === undefined ? 0 : 2 * kinkSetBack(foot, kink) * foot.size[kinkAxis(kink) === 0 ? 1 : 0];
  return long * wide - bent - holesArea(foot.holes);
}

/** mm2, within its outer edges as it stands on the car: of a box with what lies between its walls. */
export const coveredArea = (foot: Foot): number =>
  foot.kind === 'box' ? foot.size[0] * foot.size[1] : contactArea(foot);

const holesArea = (holes: Foot['holes'] = []): number =>
  holes.reduce((sum, { diameter }) => sum + (Math.PI / 4) * diameter ** 2, 0);

/** kg, of the flat steel that it is made of, holes cut; at 7850 kg/m3. Welds are not counted. */
export const footMass = (foot: Foot): number =>
  blanksOf(foot).reduce((sum, blank) => sum + blank.count * blankMass(blank), 0);

/** kg, of one such piece. */
export const blankMass = ({ along, across, thickness, holes }: Blank): number =>
  STEEL_DENSITY * thickness * ((along[1] - along[0]) * (across[1] - across[0]) - holesArea(holes));
