/**
 * What the rehearsals find: tubes that no order of bending keeps clear of machine, room and themselves, and tubes for
 * which the order matters. Not part of derive(): a search takes longer than a frame may. The command line asks for all
 * at once, the browser for one tube at a time while it is idle.
 */
import { bySeverity } from './checks/findings.ts';
import type { Finding } from './checks/types.ts';
import type { Derived } from './derive.ts';
import { roomOf } from './rehearse/machine.ts';
import { isBendable, type BendableTube } from './rehearse/pose.ts';
import { rehearse } from './rehearse/rehearse.ts';
import type { Rehearsal, RehearsedStep } from './rehearse/types.ts';
import { listed, troubleWords } from './rehearse/words.ts';
import { SEARCHED_BENDS } from './solve/bend-order.ts';

const SOURCE = 'the bender and its room as set up in this job';

/** At most one; none where the plain order is free, and where the die's own limits bar the tube: the checks say that. */
export function swingFindings(tube: BendableTube, { plain, proposed, reason }: Rehearsal): readonly Finding[] {
  const first = plain.find(({ hit, cannotHold }) => hit !== null || cannotHold !== null);
  if (first === undefined) return [];
  const base = { severity: 'warning', tube: tube.id, bend: first.bend, source: SOURCE } as const;
  const at = tube.bends[first.bend - 1]!.corner;
  if (proposed !== null) {
    const trouble = `bend ${first.bend} ${troubleWords(first)}`;
    const message = `${tube.name}: bent one after the other with end ${first.front} in front, ${trouble}. Take ${orderWords(proposed)}.`;
    return [{ ...base, id: 'bend/order-matters', at, message }];
  }
  if (first.hit === null) return [];
  if (tube.bends.length > SEARCHED_BENDS) {
    const message = `${tube.name}: bent one after the other with end ${first.front} in front, bend ${first.bend} ${troubleWords(first)}. No other order is searched for so many bends. ${mendFor(first.hit.solid, tube)}`;
    return [{ ...base, id: 'bend/plain-order-touches', at, message }];
  }
  return [
    { ...base, id: 'bend/no-free-order', at, message: `${tube.name}: ${reason}. ${mendFor(first.hit.solid, tube)}` },
  ];
}

/** The same result with what the rehearsals of all its tubes find, in their place by severity. */
export function withSwingFindings(derived: Derived): Derived {
  return withFindings(
    derived,
    derived.tubes.filter(isBendable).flatMap((tube) => swingFindings(tube, rehearse(tube))),
  );
}

/** The same result with more findings, in their place by severity; itself where there are none. */
export function withFindings(derived: Derived, more: readonly Finding[]): Derived {
  if (more.length === 0) return derived;
  return { ...derived, findings: [...derived.findings, ...more].toSorted(bySeverity) };
}

/** What would let the tube be bent where no order keeps clear, in a sentence; null where one does, or where the machine touches nothing. */
export function mendOf(tube: BendableTube, { plain, proposed }: Rehearsal): string | null {
  const touched = proposed === null ? plain.find(({ hit }) => hit !== null) : undefined;
  return touched?.hit == null ? null : mendFor(touched.hit.solid, tube);
}

function mendFor(solid: string | null, { die }: BendableTube): string {
  if (solid === 'the floor') return 'Raise the bender, or make it of two tubes.';
  if (roomOf(die.bender).some(({ name }) => name === solid))
    return `Move ${solid} away, or set the bender up elsewhere.`;
  return 'Move its corners further apart, or make it of two tubes.';
}

/**
 * "bends 3, 2 and 1 in that order with end B in front"; where the tube is turned end for end, what follows is named
 * after it.
 */
function orderWords(steps: readonly RehearsedStep[]): string {
  const runs: RehearsedStep[][] = [];
  for (const step of steps) {
    if (runs.at(-1)?.[0]!.front === step.front) runs.at(-1)!.push(step);
    else runs.push([step]);
  }
  const told = runs.map((run) => {
    const bends = run.map(({ bend }) => bend);
    const which = bends.length === 1 ? `bend ${bends[0]}` : `bends ${listed(bends)} in that order`;
    return `${which} with end ${run[0]!.front} in front`;
  });
  return told.join(', then ');
}
