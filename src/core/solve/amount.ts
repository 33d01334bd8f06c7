/**
 * How much tube: cut length and mass. The wall's volume is its area times the centreline's length (Pappus: a bend's
 * stretched outside and thickened inside cancel), less what the trim takes at each end.
 */
import type { Section } from '../job/types.ts';
import type { TubeEnd } from './types.ts';

/** kg/mm3: 7850 kg/m3, the density of steel in EN 10220. */
export const STEEL_DENSITY = 7850e-9;

/** pi/4 (D^2 - d^2), mm2. */
export function sectionArea({ outerDiameter, wall }: Section): number {
  return Math.PI * wall * (outerDiameter - wall);
}

/** Tip to tip plus allowances, mm. An end whose cutter is not reached counts from its node. */
export function blankLength(developedLength: number, ends: readonly [TubeEnd, TubeEnd]): number {
  return ends.reduce((sum, end) => sum - (end.tip ?? 0) + end.allowance, developedLength);
}

/** Mass of the coped tube without allowances, kg. */
export function copedMass(developedLength: number, section: Section, ends: readonly [TubeEnd, TubeEnd]): number {
  const trimmed = ends.reduce((sum, end) => sum + meanTrim(end, section), 0);
  return STEEL_DENSITY * sectionArea(section) * (developedLength - trimmed);
}

/**
 * Mean of the trim over the wall's cross-section, mm: the mean round each face, taken as linear between bore and outside,
 * so weighted by the first moments of the ring about them. A generator that nothing reaches keeps its metal down to the tip.
 */
function meanTrim({ outer, inner, tip }: TubeEnd, { outerDiameter, wall }: Section): number {
  const mean = (trim: Float64Array) => {
    let sum = 0;
    for (const s of trim) sum += Number.isNaN(s) ? (tip ?? 0) : s;
    return sum / trim.length;
  };
  const [ro, ri] = [outerDiameter / 2, outerDiameter / 2 - wall];
  return (mean(outer) * (2 * ro + ri) + mean(inner) * (ro + 2 * ri)) / (3 * (ro + ri));
}
