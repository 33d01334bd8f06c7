/** Sections told by their size, as a shop says them: "1 3/4 x .120". */
import type { LengthUnit, Section } from '../core/job/types.ts';
import { decimalLength } from '../core/units/length.ts';
import { exactText } from '../core/units/step.ts';

type Tube = Pick<Section, 'outerDiameter' | 'wall'>;

const sectionSize = ({ outerDiameter, wall }: Tube, unit: LengthUnit): string =>
  unit === 'in'
    ? `${exactText(outerDiameter, unit)} x ${decimalLength(wall, unit, 3).replace(/^0\./u, '.')}`
    : `${exactText(outerDiameter, unit)} x ${decimalLength(wall, unit, 2)} mm`;

/** Its name, and its size where the name does not say it. */
export function sectionInWords(section: Section, unit: LengthUnit): string {
  const size = sectionSize(section, unit);
  return section.name.includes(size) ? section.name : `${section.name} · ${size}`;
}
