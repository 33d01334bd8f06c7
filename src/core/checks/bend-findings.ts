/** What bars a tube from being bent, or costs it its place: bends, grip and clamp, sticks, the log of pulls. */
import { toDegrees } from '../geometry/angle.ts';
import { DEGREE_ROUNDING, ROUNDING } from '../geometry/tolerance.ts';
import { scale } from '../geometry/vector.ts';
import { isHoopRole } from '../job/role.ts';
import { blankToCut, clampShort, gripShort } from '../solve/amount.ts';
import { SEARCHED_BENDS } from '../solve/bend-order.ts';
import { plainFeed, type Feed } from '../solve/feed.ts';
import { costOfIgnoringRadius } from '../solve/ignored-radius.ts';
import type { SolvedTube } from '../solve/types.ts';
import { bearsAll, mendingPullOf, pullAdvices, type Unborne } from '../springback/pull-advice.ts';
import { UNSEEN } from './limits.ts';
import type { End, Finding } from './types.ts';

/** Bends that overlap, run past an end or are too near, too far or too tight for the die; nothing on a straight tube. */
export function* bendTrouble(tube: SolvedTube): Generator<Finding> {
  const { bends, straights, die, section } = tube;
  if (bends.length === 0 || die === null) return;
  const base = { tube: tube.id, source: 'practice' } as const;

  for (const [i, straight] of straights.entries()) {
    const at = (bends[i] ?? bends[i - 1])!.corner;
    const between = i > 0 && i < bends.length;
    if (straight < -ROUNDING) {
      const past = { ...base, severity: 'error', bend: Math.max(i, 1), at, straight } as const;
      yield between
        ? { ...past, id: 'bend/overlap' }
        : { ...past, id: 'bend/past-end', side: i === 0 ? 'before' : 'after' };
    } else if (between && straight < die.leastStraight - ROUNDING) {
      const least = die.leastStraight;
      yield { ...base, id: 'bend/short-straight', severity: 'error', bend: i, at, straight, least };
    }
  }
  for (const [i, bend] of bends.entries()) {
    if (toDegrees(bend.angle) > die.greatestAngle + DEGREE_ROUNDING) {
      yield {
        ...base,
        id: 'bend/beyond-die',
        severity: 'error',
        bend: i + 1,
        at: bend.corner,
        angle: bend.angle,
        greatest: die.greatestAngle,
      };
    }
  }
  const first = bends[0]!;
  if (Math.abs(die.outerDiameter - section.outerDiameter) > 0.01) {
    yield {
      ...base,
      id: 'bend/wrong-die',
      severity: 'error',
      at: first.corner,
      outerDiameter: section.outerDiameter,
      dieTakes: die.outerDiameter,
    };
  }
  const least = 3 * section.outerDiameter;
  if (die.centrelineRadius < least - ROUNDING) {
    yield {
      ...base,
      id: 'bend/tight-radius',
      severity: 'warning',
      at: first.corner,
      radius: die.centrelineRadius,
      least,
      source: 'least-radius',
    };
  }
}

/** Degrees. An angle that is kept is kept to what a person reads off a machine. */
const KEPT_TO = 0.05;

/** Bends that do not come out at the angle that is kept for them; said of the member, not of its twin, and of a bend that a cut goes through not at all. */
export function* keptAngleTrouble({ id, member, twinOf, piece, route, bends }: SolvedTube): Generator<Finding> {
  if (member.keptAngles === undefined || twinOf !== null) return;
  for (const { corner, angle } of member.keptAngles) {
    const at = route[member.path.indexOf(corner)]!;
    const bend = bends.findIndex((each) => each.corner === at);
    if (bend === -1 && piece !== null) continue;
    const turns = bend === -1 ? 0 : toDegrees(bends[bend]!.angle);
    if (Math.abs(turns - angle) <= KEPT_TO) continue;
    yield {
      id: 'bend/angle-not-kept',
      severity: 'warning',
      tube: id,
      ...(bend !== -1 && { bend: bend + 1 }),
      node: corner,
      at,
      turns,
      angle,
      source: 'practice',
    };
  }
}

/** An order that the job keeps for the tube, of a time when it was drawn with other bends. */
export function* orderTrouble({ id, bends, corners }: SolvedTube, { outdated }: Feed): Generator<Finding> {
  if (!outdated) return;
  yield {
    id: 'bend/order-outdated',
    severity: 'warning',
    tube: id,
    at: corners[0]!,
    bends: bends.length,
    source: 'kept-order',
  };
}

/**
 * What the machine holds the tube by, in the order in which it is bent: the grip at an end that stays behind when its outermost bend is
 * made, the clamp at one that is in front.
 */
export function* holdTrouble(tube: SolvedTube, { order }: Feed): Generator<Finding> {
  const { bends, straights, die } = tube;
  if (bends.length === 0 || die === null) return;
  const base = { tube: tube.id, severity: 'warning', source: 'practice' } as const;
  const letter = (end: 0 | 1): End => (end === 0 ? 'A' : 'B');
  const outermost = (end: 0 | 1) => (end === 0 ? 1 : bends.length);
  const isInFront = (end: 0 | 1) => order.find(({ bend }) => bend === outermost(end))?.front === letter(end);
  const opposite = (end: 0 | 1): 0 | 1 => (end === 0 ? 1 : 0);

  for (const rear of ENDS.filter((end) => !isInFront(end))) {
    const last = outermost(rear);
    const front = opposite(rear);
    const short = gripShort(tube, rear);
    if (straights.at(rear === 0 ? 0 : -1)! < -ROUNDING || short <= ROUNDING) continue;
    yield {
      ...base,
      id: 'bend/short-tail',
      bend: last,
      end: letter(rear),
      at: bends[last - 1]!.corner,
      tail: die.leastGrip - short,
      grips: die.leastGrip,
      missing: short,
      otherEndHolds: isInFront(front) && gripShort(tube, front) <= ROUNDING,
    };
  }
  for (const front of ENDS.filter(isInFront)) {
    const clamped = outermost(front);
    const missing = clampShort(tube, front);
    if (missing <= ROUNDING) continue;
    yield {
      ...base,
      id: 'bend/clamp-off-tube',
      bend: clamped,
      end: letter(front),
      at: bends[clamped - 1]!.corner,
      missing,
      otherEndIsBehind: !isInFront(opposite(front)),
    };
  }
}

const ENDS = [0, 1] as const;

/** More than most hoops have. */
const HOOP_BENDS = 4;

/** A hoop by the role that its member was given. */
export const isHoop = ({ member }: SolvedTube): boolean => isHoopRole(member.role);

/** More bends than an order is searched for, or than most hoops have. */
export function* manyBends(tube: SolvedTube): Generator<Finding> {
  const count = tube.bends.length;
  const base = { id: 'bend/many-bends', severity: 'note', tube: tube.id, source: 'practice' } as const;
  if (count <= HOOP_BENDS) return;
  const at = tube.bends[0]!.corner;
  const isSearched = count <= SEARCHED_BENDS;
  if (!isSearched || isHoop(tube)) yield { ...base, at, count, isSearched };
}

/** A blank that no stick holds, with the grip that its order of bending asks for; another order may need less. */
export function* stickTrouble(tube: SolvedTube, { cutLength }: Feed): Generator<Finding> {
  const { section, blankLength } = tube;
  const { stick } = section;
  if (stick === undefined || cutLength - stick <= ROUNDING) return;
  const fitting = (['A', 'B'] as const)
    .map((from) => plainFeed(tube, from))
    .find((order) => blankToCut(tube, order).blank <= stick + ROUNDING);
  const hoop = isHoop(tube);
  const mend = fitting !== undefined ? 'other-end-in-front' : hoop ? 'longer-stick' : 'joint';
  yield {
    id: 'stock/longer-than-stick',
    severity: mend === 'longer-stick' ? 'error' : 'warning',
    tube: tube.id,
    at: tube.corners[0]!,
    length: cutLength,
    grip: cutLength - blankLength,
    stick,
    mend,
    otherEnd: fitting?.[0]?.front ?? 'B',
    source: mend === 'longer-stick' ? 'one-piece' : 'practice',
  };
}

/** Where the log of pulls does not bear what this tube would be pulled to: which bends, why, and what would mend it. */
export function* pullTrouble(tube: SolvedTube): Generator<Finding> {
  const { pullLaw, die, bends } = tube;
  if (pullLaw === null || pullLaw.from === 'estimate' || die === null) return;
  const advices = pullAdvices(tube);
  const first = advices.findIndex(({ kind }) => kind === 'first');
  const advice = advices[first];
  if (advice?.kind !== 'first' || advice.why === 'nothing-known') return;
  yield {
    id: PULL_FINDINGS[advice.why],
    severity: 'warning',
    tube: tube.id,
    bend: first + 1,
    at: bends[first]!.corner,
    bends: advices.flatMap(({ kind }, i) => (kind === 'first' ? [i + 1] : [])),
    firstPull: advice.pullTo,
    net: bends[first]!.angle,
    mendNear: mendingPullOf(tube),
    isLaidOutByIt: die.radius === 'from-pulls' && advice.why !== 'coarse-scale',
    source: 'pulls',
  };
}

const PULL_FINDINGS = {
  disagree: 'bend/pulls-disagree',
  'slack-or-spring': 'bend/slack-or-spring',
  'too-far': 'bend/beyond-pulls',
  'coarse-scale': 'bend/coarse-scale',
} as const satisfies Partial<Record<Unborne, string>>;

/** That the log of pulls knows a larger radius than is laid out; silent where the log does not bear what it asks. */
export function* openingTrouble(tube: SolvedTube, { order }: Feed): Generator<Finding> {
  const { corners } = tube;
  if (tube.die === null || !bearsAll(tube)) return;
  // A bend begins at its mark, at the tangent nearer the end in front: what it takes more comes from the side behind.
  const fromB = order.every(({ front }) => front === 'B');
  const cost = costOfIgnoringRadius(fromB ? endForEnd(tube) : tube);
  if (cost < UNSEEN) return;
  yield {
    tube: tube.id,
    id: 'bend/radius-opens',
    severity: 'warning',
    end: fromB ? 'A' : 'B',
    at: corners.at(fromB ? 0 : -1)!,
    off: cost,
    source: 'pulls',
  };
}

/** The tube as it is laid out from end B: a rotation belongs to the bend that comes second. */
const endForEnd = (tube: SolvedTube): SolvedTube => ({
  ...tube,
  corners: tube.corners.toReversed(),
  straights: tube.straights.toReversed(),
  bends: tube.bends
    .map((bend, i) => ({
      ...bend,
      normal: scale(bend.normal, -1),
      rotation: tube.bends[i + 1]?.rotation ?? 0,
    }))
    .toReversed(),
});
