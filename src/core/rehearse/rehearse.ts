/**
 * A tube rehearsed on its bender: the plain order, and of all orders that keep clear the one to take.
 *
 * What is in front of a bend depends only on the made bends in front, what is behind only on those behind: each is
 * swept once and kept, and only when an order leads to it.
 */
import { toRadians, type Radians } from '../geometry/angle.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import type { BendStep } from '../job/kinds/bent.ts';
import { nearestMade, plainOrder, rotationBetween, SEARCHED_BENDS } from '../solve/bend-order.ts';
import { greatestPull, pullAdvices } from '../springback/pull-advice.ts';
import { cannotHold } from './hold.ts';
import { noOrderReason } from './no-order.ts';
import { bendsIn, bitOf, searchOrders, type TroubleOf } from './orders.ts';
import { type BendableTube } from './bendable.ts';
import { layFront, layRear } from './pose.ts';
import { firstHit, firstOf, frontHit, rearHit } from './sweep.ts';
import { sideAlong, surroundingsOf, type Side } from './surroundings.ts';
import type { Hit, Rehearsal, RehearsedStep, Trouble } from './types.ts';

/**
 * The plain order, the one proposed and how many are free; pure, takes some tens of ms. Where bends overlap nothing is
 * rehearsed.
 */
export function rehearse(tube: BendableTube): Rehearsal {
  if (tube.straights.some((straight) => straight < -ROUNDING)) {
    return { plain: [], proposed: null, reason: { kind: 'bends-overlap' }, free: 0, all: 0 };
  }
  const plain = rehearsed(tube, plainOrder(tube.bends.length, 'A', tube.die.bender.bendLies));
  if (tube.bends.length > SEARCHED_BENDS) {
    return { plain, proposed: null, reason: { kind: 'too-many-bends', count: tube.bends.length }, free: 0, all: 0 };
  }
  const trouble = troublesOf(tube);
  const search = searchOrders(tube, trouble);
  const proposed = search.best === null ? null : rehearsed(tube, search.best);
  const reason = proposed === null ? noOrderReason(tube.bends.length, trouble) : null;
  return { plain, proposed, reason, free: search.free, all: search.all };
}

/**
 * `pullTo`: what a person is given to pull a bend of this tube to, and its net angle at least. `pulled`: how far the machine turns for
 * it in the end, as a first pull is gone on from, to no more than the log allows.
 */
function pullOf(tube: BendableTube, bend: number): Pick<RehearsedStep, 'pullTo' | 'pulled'> {
  const { angle } = tube.bends[bend - 1]!;
  const advice = pullAdvices(tube)[bend - 1]!;
  const pullTo = Math.max(angle, toRadians(advice.pullTo));
  const goesOn = advice.kind === 'first' && tube.pullLaw !== null;
  return { pullTo, pulled: goesOn ? Math.max(pullTo, greatestPull(tube.pullLaw, angle)) : pullTo };
}

/** How far the machine turns for a bend of this tube in the end. */
export const pulledAngle = (tube: BendableTube, bend: number): Radians => pullOf(tube, bend).pulled;

function troublesOf(tube: BendableTube): TroubleOf {
  const around = surroundingsOf(tube);
  const sides = new Map<string, { readonly side: Side; readonly hit: Hit | null }>();
  const kept = new Map<string, Trouble>();
  const swept = (which: 'front' | 'rear', set: number, step: BendStep) => {
    const key = `${which} ${step.bend}${step.front} ${set}`;
    const known = sides.get(key);
    if (known !== undefined) return known;
    const side = sideAlong((which === 'front' ? layFront : layRear)(tube, bendsIn(set), step), around);
    const hit = (which === 'front' ? frontHit : rearHit)(side, pulledAngle(tube, step.bend), around);
    sides.set(key, { side, hit });
    return { side, hit };
  };
  const sweep = (made: number, step: BendStep): Hit | null => {
    const nearerA = made & (bitOf(step.bend) - 1);
    const nearerB = made & ~(2 * bitOf(step.bend) - 1);
    const [ahead, behind] = step.front === 'A' ? [nearerA, nearerB] : [nearerB, nearerA];
    const front = swept('front', ahead, step);
    const rear = swept('rear', behind, step);
    return firstOf(front.side, rear.side, front.hit, rear.hit, pulledAngle(tube, step.bend), around);
  };
  const trouble = (made: number, step: BendStep): Trouble => {
    const key = `${step.bend}${step.front} ${made}`;
    const known = kept.get(key);
    if (known !== undefined) return known;
    const barred = cannotHold(tube, bendsIn(made), step);
    const found = { hit: barred === null ? sweep(made, step) : null, cannotHold: barred };
    kept.set(key, found);
    return found;
  };
  return trouble;
}

function rehearsed(tube: BendableTube, order: readonly BendStep[]): readonly RehearsedStep[] {
  return order.map((step, i): RehearsedStep => {
    const before = order.slice(0, i);
    const made = new Set(before.map(({ bend }) => bend));
    const rotationFrom = nearestMade(before, step.bend);
    const { pullTo, pulled } = pullOf(tube, step.bend);
    const barred = cannotHold(tube, made, step);
    return {
      ...step,
      pullTo,
      pulled,
      net: tube.bends[step.bend - 1]!.angle,
      rotation: rotationFrom === null ? 0 : rotationBetween(tube.bends, rotationFrom, step.bend),
      rotationFrom,
      hit: barred === null ? firstHit(tube, made, step, pulled) : null,
      cannotHold: barred,
    };
  });
}
