/** What pulls are logged for: each die with each tube that is bent on it. */
import type { Die } from '../../core/job/kinds/die.ts';
import type { Section } from '../../core/job/kinds/section.ts';
import type { Job } from '../../core/job/types.ts';

/** One die with one size of tube. */
export interface Pair {
  readonly die: Die;
  readonly section: Section;
}

/** Every die with each section of its diameter, and every pair that a member or a pull names beside those. */
export function pairsOf({ dies, sections, members, pulls }: Job): readonly Pair[] {
  const named = new Set([...members, ...pulls].map(({ die, section }) => JSON.stringify([die, section])));
  return dies.flatMap((die) =>
    sections
      .filter(
        (section) => section.outerDiameter === die.outerDiameter || named.has(JSON.stringify([die.id, section.id])),
      )
      .map((section) => ({ die, section })),
  );
}
