/**
 * How much tube: cut length and mass. The wall's volume is its area times the centreline's length (Pappus: a bend's
 * stretched outside and thickened inside cancel), less what the trim takes at each end.
 */
import type { BendStep } from '../job/kinds/bent.ts';
import type { Section } from '../job/kinds/section.ts';
import type { SolvedTube, TubeEnd } from './types.ts';

/** kg/mm3: 7850 kg/m3, the density of steel in EN 10220. */
export const STEEL_DENSITY = 7850e-9;

/** pi/4 (D^2 - d^2), mm2. */
export function sectionArea({ outerDiameter, wall }: Pick<Section, 'outerDiameter' | 'wall'>): number {
  return Math.PI * wall * (outerDiameter - wall);
}

/** How far the blank runs on beyond an end's node, mm; below zero where its tip lies inside the node. */
export const beyondNode = ({ allowance, tip }: TubeEnd): number => allowance - (tip ?? 0);

/**
 * What the machine misses to hold the tube by behind its last bend, mm, with end A (0) or end B (1) behind: the straight there with
 * all that the blank has falls so far short of the die's least grip. 0 without bends.
 */
export function gripShort({ die, bends, straights, ends }: SolvedTube, behind: 0 | 1): number {
  if (die === null || bends.length === 0) return 0;
  return Math.max(0, die.leastGrip - straights.at(behind === 0 ? 0 : -1)! - beyondNode(ends[behind]));
}

/**
 * What the clamp misses on the end in front, mm, with end A (0) or end B (1) in front: the mark that it is set to for the outermost
 * bend there lies so far off the blank. 0 without bends.
 */
export function clampShort({ die, bends, developedLength, ends }: SolvedTube, front: 0 | 1): number {
  const bend = bends.at(front === 0 ? 0 : -1);
  if (die === null || bend === undefined) return 0;
  const toEnd = (front === 0 ? bend.start : developedLength - bend.end) + beyondNode(ends[front]);
  return Math.max(0, die.clampOffset - toEnd);
}

/**
 * What to cut, mm: the tube's blank, with the grip that this order leaves at end A and at end B for the machine to hold: behind the
 * outermost bend where that end stays behind, under the clamp where it goes in front.
 */
export function blankToCut(
  tube: SolvedTube,
  order: readonly BendStep[],
): { readonly blank: number; readonly grip: readonly [number, number] } {
  const left = (end: 'A' | 'B', which: 0 | 1, outermost: number): number => {
    const step = order.find(({ bend }) => bend === outermost);
    return step === undefined ? 0 : (step.front === end ? clampShort : gripShort)(tube, which);
  };
  const [atA, atB] = [left('A', 0, 1), left('B', 1, tube.bends.length)];
  return { blank: tube.blankLength + atA + atB, grip: [atA, atB] };
}

/** Tip to tip plus allowances, mm. An end whose cutter is not reached counts from its node. */
export function blankLength(developedLength: number, ends: readonly [TubeEnd, TubeEnd]): number {
  return ends.reduce((sum, end) => sum + beyondNode(end), developedLength);
}

/** Mass of the coped tube without allowances, kg. */
export function copedMass(developedLength: number, section: Section, ends: readonly [TubeEnd, TubeEnd]): number {
  return STEEL_DENSITY * sectionArea(section) * (developedLength - ends[0].meanTrim - ends[1].meanTrim);
}

/**
 * Distance from the tube's axis, mm, at which the trim stands for the whole wall: the centroid of a narrow sector of the
 * ring, exact for a trim that is linear through the wall. The faces themselves would not do: a wall that just touches the
 * inside of a bend has its outer face trimmed far less than all that lies under it.
 */
export function wallCentroid({ outerDiameter, wall }: Section): number {
  const [ro, ri] = [outerDiameter / 2, outerDiameter / 2 - wall];
  // 2 (ro^3 - ri^3) / 3 (ro^2 - ri^2) without the factor ro - ri, which is nothing for a wall too thin to show beside ro.
  return (2 * (ro ** 2 + ro * ri + ri ** 2)) / (3 * (ro + ri));
}

/**
 * Mean of a trim round the tube, mm; a generator that nothing reaches keeps its metal down to the tip. `edge` is where between
 * a reached degree and one beside it that is not the trim ends: the wall steps down there, and not half way.
 */
export function meanOfTrim(
  trim: Float64Array,
  tip: number | null,
  edge: (reached: number, passed: number) => { readonly degree: number; readonly s: number },
): number {
  const stands = tip ?? 0;
  let sum = 0;
  for (let k = 0; k < trim.length; k++) {
    const here = trim[k]!;
    const next = trim[k + 1 < trim.length ? k + 1 : 0]!;
    sum += Number.isNaN(here) ? stands : here;
    if (Number.isNaN(here) === Number.isNaN(next)) continue;
    const [reached, passed] = Number.isNaN(next) ? [k, k + 1] : [k + 1, k];
    const { degree, s } = edge(reached, passed);
    const share = Math.abs(degree - reached);
    const last = trim[reached % trim.length]!;
    sum += (share * (last + s)) / 2 + (1 - share) * stands - (last + stands) / 2;
  }
  return sum / trim.length;
}
