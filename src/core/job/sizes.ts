/**
 * Sections and dies named by their size, as a shop says them: "1 3/4 x .120", "6 in CLR". A new one is named by it, and
 * the name goes with the size until somebody types another.
 */
import { shownName } from './shown.ts';
import type { Die } from './kinds/die.ts';
import type { Section } from './kinds/section.ts';
import { decimalLength, type LengthUnit } from '../units/length.ts';
import { exactText } from '../units/step.ts';

type Tube = Pick<Section, 'outerDiameter' | 'wall'>;

/** "1 3/4 x .120", "44.45 x 3.05 mm": outer diameter x wall. */
export const sectionSize = ({ outerDiameter, wall }: Tube, unit: LengthUnit): string =>
  unit === 'in'
    ? `${exactText(outerDiameter, unit)} x ${decimalLength(wall, unit, 3).replace(/^0\./u, '.')}`
    : `${exactText(outerDiameter, unit)} x ${decimalLength(wall, unit, 2)} mm`;

/** "6 in CLR": its centreline radius. */
export const dieSize = ({ centrelineRadius }: Pick<Die, 'centrelineRadius'>, unit: LengthUnit): string =>
  `${exactText(centrelineRadius, unit)} ${unit} CLR`;

/** Its name, and its size where the name does not say it. */
export function sectionInWords(section: Section, unit: LengthUnit): string {
  const size = sectionSize(section, unit);
  const name = shownName(section.name);
  return name.includes(size) ? name : `${name} · ${size}`;
}

/** The size to set; a name that is only the old size becomes the new one. */
export const resizedSection = (section: Section, size: Partial<Tube>, unit: LengthUnit): Partial<Section> =>
  section.name === sectionSize(section, unit) ? { ...size, name: sectionSize({ ...section, ...size }, unit) } : size;

/** The radius to set; a name that is only the old size becomes the new one. */
export const resizedDie = (die: Die, centrelineRadius: number, unit: LengthUnit): Partial<Die> =>
  die.name === dieSize(die, unit)
    ? { centrelineRadius, name: dieSize({ centrelineRadius }, unit) }
    : { centrelineRadius };
