/**
 * The number a person is given to pull to for a bend, what kind of number it is, and why: every screen, sheet and table asks here.
 *
 * The law of the pulls answers any angle, also where it has no right to: two pulls close together, laid on a line, ask 120 for 90.
 * So it is shown only where the log bears it: where one more pull would come within SURE of it, 95 times in 100. Elsewhere the
 * number is a first pull: from where the pulls are surest, which is their mean, all is taken for slack upwards and all for spring
 * downwards. With neither less than nothing that is the least that can be asked, so it stays short: let go, read, go on. What
 * is short is pulled on; what is too far is scrap.
 *
 * How far a pull scatters is reckoned from the readings of the log and from READING, what is known of such readings beforehand, pooled
 * (docs/maths/springback.md). Of pulls at one angle alone it is not known what is slack and what is spring: what that leaves
 * open adds to it.
 */
import { toDegrees, toRadians, type Degrees, type Radians } from '../geometry/angle.ts';
import { FIRST_BENDER } from '../job/kinds/bender.ts';
import type { Die } from '../job/kinds/die.ts';
import type { Pull } from '../job/kinds/pull.ts';
import { pooledHalfWidth, spreadAt } from '../numerics/line-fit.ts';
import { onStep, onStepBelow } from '../units/angle.ts';
import { isMisread, pulledFor, READING, scatterOf, tellsSlackFromSpring, type PullLaw } from './pull-law.ts';

/**
 * Why there is no more than a first pull. 'nothing-known': no pulls, and no steel that is known; the next three: the log does not
 * bear the law at the angle; 'coarse-scale': what is asked lies between two divisions of the machine's scale that are far apart.
 */
export type Unborne = 'nothing-known' | 'disagree' | 'slack-or-spring' | 'too-far' | 'coarse-scale';

export type PullAdvice =
  /** By the law. `within`: 95 % of further pulls come so near to it; null with fewer than three pulls, which do not say. */
  | { readonly kind: 'law'; readonly pullTo: Degrees; readonly exact: Radians; readonly within: Radians | null }
  /** By the steel's spring alone, which reads low: to start at. `short`: by how much it may, at the most. */
  | { readonly kind: 'estimate'; readonly pullTo: Degrees; readonly exact: Radians; readonly short: Degrees }
  /** Short of what is right: to be pulled to, let go and read, then gone on from. */
  | { readonly kind: 'first'; readonly pullTo: Degrees; readonly why: Unborne };

/** How far one more pull may come from the law, 95 times in 100, for the law to be shown. A degree moves the end of a metre by 17 mm. */
export const SURE: Radians = toRadians(1.25);

/** A bend this near is left alone (common practice). */
export const BEND_TOLERANCE: Degrees = 0.5;

/** How far past the finished angle benders are pulled in all, slack and spring together (common practice); more on a larger bend. */
export const MET_WITH: { readonly least: Degrees; readonly greatest: Degrees } = { least: 2, greatest: 6 };

/** A tube, as far as it says what its bends are pulled to. */
interface Pulled {
  readonly pullLaw: PullLaw | null;
  /** Null on a tube without bends. */
  readonly die: Die | null;
  readonly bends: readonly { readonly angle: Radians }[];
}

/** What to pull each bend of a tube to, from end A. */
export const pullAdvices = ({ pullLaw, die, bends }: Pulled): readonly PullAdvice[] =>
  bends.map(({ angle }) => pullAdvice(pullLaw, angle, (die?.bender ?? FIRST_BENDER).pullStep));

/** Where one more pull would do most for a tube's bends, see mendingPull. */
export const mendingPullOf = ({ pullLaw, bends }: Pulled): Degrees =>
  mendingPull(
    pullLaw,
    bends.map(({ angle }) => angle),
  );

/**
 * What to pull a bend of this net angle to. `pullTo` is on the machine's scale, whose division is `step`: the nearest one to what
 * the law or the estimate asks (`exact`), for a first pull the one below. Where the nearest is not near, the one below is a
 * first pull: what is too far is scrap.
 */
export function pullAdvice(law: PullLaw | null, net: Radians, step: Degrees): PullAdvice {
  if (law === null) return { kind: 'first', pullTo: onStepBelow(toDegrees(net), step), why: 'nothing-known' };
  const notBorne = unborne(law, net);
  const exact = leastPull(law, net, notBorne);
  const [nearest, below] = [onStep(toDegrees(exact), step), onStepBelow(toDegrees(exact), step)];
  const why = notBorne ?? (Math.abs(nearest - toDegrees(exact)) > BEND_TOLERANCE ? 'coarse-scale' : null);
  if (why !== null) return { kind: 'first', pullTo: below, why };
  if (law.from === 'estimate') {
    return {
      kind: 'estimate',
      pullTo: nearest,
      exact,
      short: Math.max(0, toDegrees(net) + MET_WITH.greatest - nearest),
    };
  }
  return { kind: 'law', pullTo: nearest, exact, within: furtherPulls(law, net) };
}

/** What the law asks where the log bears it, elsewhere the least that a bend of this net angle can take. Before any scale. */
export const bornePull = (law: PullLaw, net: Radians): Radians => leastPull(law, net, unborne(law, net));

/** `why`: what `unborne` answers of the two. */
const leastPull = (law: PullLaw, net: Radians, why: ReturnType<typeof unborne>): Radians =>
  why === null ? pulledFor(law, net) : net + leastOpening(law, net, why);

/**
 * The most that the log says a bend of this net angle can take: where it bears the law what that asks, elsewhere all of the
 * opening taken for spring upwards and for slack downwards. For whoever must keep clear of the swing.
 */
export function greatestPull(law: PullLaw, net: Radians): Radians {
  const why = unborne(law, net);
  return why === null ? pulledFor(law, net) : net + greatestOpening(law, net, why);
}

/** Whether the log bears the law at this net angle. */
export const isBorne = (law: PullLaw, net: Radians): boolean => unborne(law, net) === null;

/** Whether the log bears it at every bend of a tube; not where there is none, but an estimate alone. */
export const bearsAll = ({ pullLaw, bends }: Pick<Pulled, 'pullLaw' | 'bends'>): boolean =>
  pullLaw !== null && pullLaw.from !== 'estimate' && bends.every(({ angle }) => isBorne(pullLaw, angle));

/** From which whole degree of net angle to which the log bears the law; null where nowhere. */
export function borneRange(law: PullLaw): { readonly least: Degrees; readonly greatest: Degrees } | null {
  const borne = WHOLE_DEGREES.filter((net) => isBorne(law, toRadians(net)));
  return borne.length === 0 ? null : { least: borne[0]!, greatest: borne.at(-1)! };
}

/** Of bends that a machine makes. */
const WHOLE_DEGREES: readonly Degrees[] = Array.from({ length: 180 }, (_, i) => i + 1);

/** How near to the law 95 % of further pulls come at this net angle; null with fewer than three pulls, which do not say. */
export const furtherPulls = (law: PullLaw, net: Radians): Radians | null =>
  law.pulls.length < 3 ? null : halfWidth(law, net);

/**
 * The net angle, to 5 degrees, at which one more pull does most for these bends: of those that the log does not bear the one
 * farthest from its pulls; where the pulls disagree their own, to see which is right.
 */
export function mendingPull(law: PullLaw | null, nets: readonly Radians[]): Degrees {
  const five = (angle: Radians): Degrees => Math.max(5, onStep(toDegrees(angle), 5));
  if (law === null || law.pulls.length === 0) return five(Math.max(...nets));
  const from = meanNet(law);
  const off = nets.map((net) => ({ net, why: unborne(law, net) })).filter(({ why }) => why !== null);
  if (off.length === 0 || off[0]!.why === 'disagree') return five(from);
  return five(off.reduce((best, each) => (Math.abs(each.net - from) > Math.abs(best.net - from) ? each : best)).net);
}

/** Null where the log bears the law at this net angle, and for an estimate, which rests on no log. */
function unborne(law: PullLaw, net: Radians): 'disagree' | 'slack-or-spring' | 'too-far' | null {
  if (law.from === 'estimate') return null;
  if (law.doubted || !(halfWidth(law, meanNet(law)) <= SURE)) return 'disagree';
  if (halfWidth(law, net) <= SURE && !isMisread(toDegrees(pulledFor(law, net)), toDegrees(net))) return null;
  return tellsSlackFromSpring(law) ? 'too-far' : 'slack-or-spring';
}

/** Half-width, 95 %, of where one more pull at this net angle would come about the law of some pulls. */
function halfWidth({ pulls, fit }: PullLaw, net: Radians): Radians {
  if (fit !== null) return scatterOf(fit) * spreadAt(fit, net);
  const openings = pulls.map(({ pulled, net: came }) => toRadians(pulled - came));
  const opening = mean(openings);
  const squares = openings.reduce((sum, each) => sum + (each - opening) ** 2, 0);
  const one = pooledHalfWidth(squares, pulls.length - 1, READING);
  const sameAngle = toRadians(pulls[0]!.net);
  return one * Math.sqrt(1 + 1 / pulls.length) + Math.abs(opening * (net / sameAngle - 1));
}

/** The least that a bend of this net angle can open by. Of pulls that disagree the one that asks least may be the right one. */
const leastOpening = (law: PullLaw, net: Radians, why: Unborne): Radians =>
  Math.min(...openings(law, why, (times) => Math.min(1, times), net));

/** The most, likewise. */
const greatestOpening = (law: PullLaw, net: Radians, why: Unborne): Radians =>
  Math.max(...openings(law, why, (times) => Math.max(1, times), net));

/**
 * What a bend of this net angle opens by, from the mean of the pulls; from each pull that can be, where they disagree. `share` says
 * how the opening grows with the angle, of which it is given how many times that of the pulls it is.
 */
function openings(
  { pulls }: PullLaw,
  why: Unborne,
  share: (times: number) => number,
  net: Radians,
): readonly Radians[] {
  const from = (some: readonly Pull[]): Radians => {
    const opening = toRadians(mean(some.map(({ pulled, net: came }) => pulled - came)));
    return Math.max(0, opening) * share(net / toRadians(mean(some.map(({ net: came }) => came))));
  };
  if (why !== 'disagree') return [from(pulls)];
  const believable = pulls.filter(({ pulled, net: came }) => !isMisread(pulled, came));
  return believable.length === 0 ? [0] : believable.map((pull) => from([pull]));
}

const meanNet = ({ pulls }: PullLaw): Radians => toRadians(mean(pulls.map(({ net }) => net)));

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
