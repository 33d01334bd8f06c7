/**
 * How far a bend opens when it is let go, before anybody has logged a pull: elastic recovery of a fully plastic ring.
 *
 * 1/R - 1/R' = M/(EI) with M = f S sy, S the elastic section modulus and f the ring's shape factor
 * (16/(3 pi)) (1 - k^3)/(1 - k^4), k = d/D (textbook plasticity; docs/maths/springback.md). It knows nothing of the slack
 * in dies, pins and frame, so it reads low: an estimate, and always to be called one.
 */
import type { Section } from '../job/kinds/section.ts';
import { YOUNGS_MODULUS, type Steel } from './steels.ts';

/** The share of the net angle that has to be pulled beyond it; dimensionless, about 0.014 to 0.019 for common tube. */
export function elasticRecovery({ outerDiameter, wall }: Section, centrelineRadius: number, steel: Steel): number {
  const k = (outerDiameter - 2 * wall) / outerDiameter;
  // (1 - k^3) / (1 - k^4) without the factor 1 - k, which is nothing for a wall too thin to show in k.
  const shapeFactor = ((16 / (3 * Math.PI)) * (1 + k + k ** 2)) / ((1 + k) * (1 + k ** 2));
  // M R / (E I) with M = f (I / (D/2)) sy: the second moment of area cancels.
  return (shapeFactor * steel.yield * centrelineRadius) / (YOUNGS_MODULUS * (outerDiameter / 2));
}
