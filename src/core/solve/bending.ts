/**
 * What a member's bends are made with: die, tube, and how far that pair is pulled for an angle. Members of one die,
 * section and batch share it.
 */
import type { Die } from '../job/kinds/die.ts';
import type { Member } from '../job/kinds/member.ts';
import type { Section } from '../job/kinds/section.ts';
import type { Job } from '../job/types.ts';
import { effectiveRadius } from '../springback/opened-radius.ts';
import { pullLaw, type PullLaw } from '../springback/pull-law.ts';
import type { RadiusAt } from './centreline.ts';

export interface Bending {
  readonly die: Die;
  readonly section: Section;
  /** Null where there are no pulls and the steel is not known. */
  readonly law: PullLaw | null;
}

/** Looks up a member's bending; null for a member without a die. */
export function bendingOfMembers({ dies, sections, pulls }: Job): (member: Member) => Bending | null {
  const dieOf = new Map(dies.map((die) => [die.id, die]));
  const sectionOf = new Map(sections.map((section) => [section.id, section]));
  const known = new Map<Die, Map<Section, Map<string | undefined, Bending>>>();
  return ({ die: dieId, section: sectionId, batch }) => {
    if (dieId === undefined) return null;
    const [die, section] = [dieOf.get(dieId)!, sectionOf.get(sectionId)!];
    const ofDie = had(known, die, () => new Map());
    const ofSection = had(ofDie, section, () => new Map());
    return had(ofSection, batch, () => ({ die, section, law: pullLaw(pulls, die, section, batch) }));
  };
}

/** What the map holds under the key; where it holds nothing, what `make` makes, which it holds from then on. */
function had<Key, Value>(map: Map<Key, Value>, key: Key, make: () => Value): Value {
  const before = map.get(key);
  if (before !== undefined) return before;
  const made = make();
  map.set(key, made);
  return made;
}

/** Centreline radius that each bend is laid out with: the die's own, or what the pulls say it opens to. */
export function radiusAt({ die, law }: Bending): RadiusAt {
  if (die.radius === 'nominal' || law === null) return () => die.centrelineRadius;
  return (angle) => effectiveRadius(law, die.centrelineRadius, angle);
}

/** True when both lay out every angle with the same radius. */
export function sameRadii(a: Pick<Bending, 'die' | 'law'> | null, b: Bending | null): boolean {
  if (a === null || b === null) return a === b;
  if (a.die.centrelineRadius !== b.die.centrelineRadius || a.die.radius !== b.die.radius) return false;
  return a.die.radius === 'nominal' || sameLaw(a.law, b.law);
}

/** True when both say the same of the machine, and rest on the same pulls. */
export function sameLaw(a: PullLaw | null, b: PullLaw | null): boolean {
  if (a === null || b === null) return a === b;
  return (
    a.a === b.a &&
    a.b === b.b &&
    a.from === b.from &&
    a.batch === b.batch &&
    a.pulls.length === b.pulls.length &&
    a.pulls.every((pull, i) => pull === b.pulls[i])
  );
}
