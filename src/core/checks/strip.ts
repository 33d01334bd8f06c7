/**
 * How thick the strip of wall is that passes by the bar which cuts another in two. Lines of the branch at a radius within its wall pass by as
 * long as that radius is greater than some least one; the strip reaches from there to the outside.
 *
 * Of a straight run tube the lines at radius rho lie up to rho + d from the plane through its axis along the branch, d the distance between the
 * axes, and pass by where that is over the run tube's radius. Round a bend the least radius is closed in on.
 */
import { rimOf } from '../geometry/rim.ts';
import { metBy } from '../geometry/met-sleeve.ts';
import { rotateAbout } from '../geometry/vector.ts';
import type { TubeEnd } from '../solve/types.ts';

/** mm. A thinner strip is taken off with a file when the pieces are fitted to the bar that runs through. Common practice. */
const FILED = 1;
/** At least this share of the wall meets the bar all round: a strip of half the wall's thickness still bears. Ours. */
const OF_WALL = 0.5;
/** mm. A thinner one is as a hair, and nobody sees it. */
const HAIR = 0.05;
/** mm, to which the least radius that passes by a bend is closed in on. */
const CLOSED_IN = 1e-6;

/** What becomes of a strip: nothing to see, filed off, or too thick for that. */
export type StripKind = 'unseen' | 'filed' | 'holds';

/** Which it is of a wall that thick (mm). */
export const stripKind = (thickness: number, wall: number): StripKind =>
  thickness <= HAIR ? 'unseen' : thickness <= Math.min(FILED, wall * OF_WALL) ? 'filed' : 'holds';

/** mm, 0 where the outside is cut all round, at most the wall. Of an end with one cutter; where it has more the first is asked. */
export function stripThickness({ cuts, cutter }: TubeEnd): number {
  const { section, sleeves } = cutter;
  const [sleeve, cut] = [sleeves[0]!, cuts[0]!];
  const [outside, bore] = [section.outerDiameter / 2, section.outerDiameter / 2 - section.wall];
  const within = (thickness: number): number => Math.min(Math.max(thickness, 0), section.wall);
  if (sleeve.path.pieces.every(({ kind }) => kind === 'line')) {
    return within(Math.abs(cut.axisOffset) + outside - sleeve.radius);
  }
  // The strip lies a quarter turn from the acute side: counted from that it is among the whole degrees that are asked.
  const { bundle } = cutter;
  const turned = { ...bundle, reference: rotateAbout(bundle.reference, bundle.direction, cut.clocking) };
  const passes = (rho: number): boolean => rimOf(metBy([sleeve], turned, rho)).passedBy;
  if (!passes(outside)) return 0;
  if (passes(bore)) return section.wall;
  let [met, passed] = [bore, outside];
  while (passed - met > CLOSED_IN) {
    const middle = (met + passed) / 2;
    if (passes(middle)) passed = middle;
    else met = middle;
  }
  return outside - passed;
}
