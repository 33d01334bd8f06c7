/**
 * Which section and which die of the shop is which of the job's.
 *
 * Not by the id alone: ids count up from 1 in every job that is begun empty, so that "d1" is one shop's 6 in die and another's
 * 4 1/2 in. First come those whose id and sizes agree; then, under whatever ids, those whose sizes do; then those whose id, tube and
 * name do, since a radius or a wall that was measured again keeps its name, and another die has another. No record of the shop is
 * two of the job's. A record that takes over all fields of its counterpart keeps it: that is why names come last.
 */
import { ROUNDING } from '../geometry/tolerance.ts';
import type { Section } from '../job/kinds/section.ts';
import type { Job } from '../job/types.ts';
import type { ShopDie } from './kinds/die.ts';
import type { Shop } from './types.ts';

/** By the job's id the shop's record. */
export interface Counterparts {
  readonly sections: ReadonlyMap<string, Section>;
  readonly dies: ReadonlyMap<string, ShopDie>;
}

/** What of the shop is the same thing as a section or die of the job: by id and size, else by size and name. */
export const counterparts = (job: Pick<Job, 'sections' | 'dies'>, shop: Shop): Counterparts => ({
  sections: paired<Section>(
    job.sections,
    shop.sections,
    (a, b) => a.id === b.id && isSameSection(a, b),
    (a, b) => isSameSection(a, b) && a.material === b.material,
    isCalledAlike,
  ),
  dies: paired<ShopDie>(job.dies, shop.dies, (a, b) => a.id === b.id && isSameDie(a, b), isSameDie, isCalledAlike),
});

/** Two lengths that a person could not tell apart. */
export const isSameLength = (a: number, b: number): boolean => Math.abs(a - b) <= ROUNDING;

const isSameTube = (a: OfTube, b: OfTube): boolean => isSameLength(a.outerDiameter, b.outerDiameter);

/** Whether diameter and wall agree; ids do not count. */
export const isSameSection = (a: Section, b: Section): boolean => isSameTube(a, b) && isSameLength(a.wall, b.wall);

/** Whether the two are for one tube and of one radius; ids do not count. */
export const isSameDie = (a: ShopDie, b: ShopDie): boolean =>
  isSameTube(a, b) && isSameLength(a.centrelineRadius, b.centrelineRadius);

/** Whether id, name and tube agree: it was measured again. */
export const isCalledAlike = (a: OfTube, b: OfTube): boolean => a.id === b.id && a.name === b.name && isSameTube(a, b);

interface OfTube {
  readonly id: string;
  readonly name: string;
  readonly outerDiameter: number;
}

/** By one test after the other: what passes an earlier one takes its place first. */
function paired<R extends { readonly id: string }>(
  ours: readonly R[],
  theirs: readonly R[],
  ...tests: readonly ((our: R, their: R) => boolean)[]
): ReadonlyMap<string, R> {
  const found = new Map<string, R>();
  const given = new Set<R>();
  for (const test of tests) {
    for (const our of ours) {
      const their = found.has(our.id) ? undefined : theirs.find((one) => !given.has(one) && test(our, one));
      if (their === undefined) continue;
      found.set(our.id, their);
      given.add(their);
    }
  }
  return found;
}
