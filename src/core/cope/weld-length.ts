/**
 * How long the weld at a cut end is: the length in space of the line that the outer wall is cut along. Unrolled, a place of it lies rho phi round
 * the tube and s(phi) along it, and unrolling keeps lengths. Between two places chords are too short by what falls fourfold with half the step, so that
 * of two chords and of four the rest is known (Richardson, 1911); steps are halved until it is small. docs/maths/weld.md.
 */
import { toRadians, type Radians } from '../geometry/angle.ts';
import { GENERATORS } from '../geometry/sleeve.ts';
import { remembered } from '../remembered.ts';
import { trimLine } from '../solve/end-cutter.ts';
import type { TubeEnd } from '../solve/types.ts';

export interface WeldLength {
  /** mm, of what is cut; no step of the wall counts, where one place of a run tube gives way to another. */
  readonly length: number;
  /** Of the turn so much is reached by nothing, and there is nothing to weld to: radians, 0 at most ends. */
  readonly open: Radians;
}

/** mm. Two chords that are longer than one by less, and four than two, are near enough to the curve: of one corner the middle alone may lie on the chord by chance. */
const NEAR = 1e-6;
/** Of two chords one that is so much of both is longer for a step of the wall within it, or a corner. */
const UNEVEN = 0.75;
/** mm. Two chords together below this are not worth a look at which is longer. */
const LITTLE = 1e-4;
/** Radians. No step is halved further: what it is on either side of is a corner, an end of the curve, or a step of the wall. */
const LEAST_STEP = 1e-12;
/** mm. Within LEAST_STEP no curve rises by so much, not even where it runs along the tube. */
const STEPS = 1e-3;

interface Place {
  readonly phi: Radians;
  /** mm along the tube; NaN where nothing is reached. */
  readonly s: number;
}

/** At an end; kept as long as that. */
export const weldLength: (end: TubeEnd) => WeldLength = remembered(({ cutter }) => {
  const rho = cutter.section.outerDiameter / 2;
  const trim = trimLine(cutter, rho);
  const at = (phi: Radians): Place => ({ phi, s: trim(phi) });
  const chord = (from: Place, to: Place): number => Math.hypot(rho * (to.phi - from.phi), to.s - from.s);

  const between = (from: Place, to: Place): Place => at((from.phi + to.phi) / 2);

  let length = 0;
  let open = 0;
  const add = (from: Place, middle: Place, to: Place): void => {
    const step = to.phi - from.phi;
    const missed = [from, middle, to].every(({ s }) => Number.isNaN(s));
    if (missed || step < LEAST_STEP) {
      if (missed) open += step;
      else if (Math.abs(to.s - from.s) < STEPS) length += chord(from, to);
      return;
    }
    const [early, late] = [between(from, middle), between(middle, to)];
    const halves = [chord(from, middle), chord(middle, to)] as const;
    const one = chord(from, to);
    const two = halves[0] + halves[1];
    const four = chord(from, early) + chord(early, middle) + chord(middle, late) + chord(late, to);
    if (four - two < NEAR && two - one < NEAR && (two < LITTLE || Math.max(...halves) < UNEVEN * two)) {
      length += (4 * four - two) / 3;
      return;
    }
    add(from, early, middle);
    add(middle, late, to);
  };

  const first = at(0);
  let before = first;
  for (let degree = 1; degree <= GENERATORS; degree++) {
    const here = degree === GENERATORS ? { ...first, phi: 2 * Math.PI } : at(toRadians(degree));
    add(before, between(before, here), here);
    before = here;
  }
  return { length, open };
});
