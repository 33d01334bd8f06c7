/**
 * What a rehearsal finds: a tube that no order of bending keeps clear of machine, room and itself, or one for which the order
 * matters. Apart from the other checks, because a rehearsal takes longer than an edit may.
 */
import type { BendStep } from '../job/kinds/bent.ts';
import type { BendableTube } from '../rehearse/bendable.ts';
import type { Rehearsal, SolidId } from '../rehearse/types.ts';
import { sameOrder, SEARCHED_BENDS } from '../solve/bend-order.ts';
import type { SwingMend } from './swing-types.ts';
import type { Finding } from './types.ts';

/**
 * At most one; none where the plain order is free, where the tube is bent in the proposed `order` already, and where the die's own
 * limits bar the tube: the checks say that.
 */
export function swingFindings(
  tube: BendableTube,
  { plain, proposed, reason }: Rehearsal,
  order: readonly BendStep[],
): readonly Finding[] {
  const trouble = plain.find(({ hit, cannotHold }) => hit !== null || cannotHold !== null);
  if (trouble === undefined || (proposed !== null && sameOrder(proposed, order))) return [];
  const { bend, front, hit, cannotHold } = trouble;
  const at = tube.bends[bend - 1]!.corner;
  const base = { severity: 'warning', tube: tube.id, bend, at, source: 'bender-room' } as const;
  const barred = { front, trouble: { hit, cannotHold } };
  if (proposed !== null) {
    const order = proposed.map((step) => ({ bend: step.bend, front: step.front }));
    return [{ ...base, ...barred, id: 'bend/order-matters', order }];
  }
  if (hit === null || reason === null) return [];
  const mend = mendFor(hit.solid);
  return tube.bends.length > SEARCHED_BENDS
    ? [{ ...base, ...barred, id: 'bend/plain-order-touches', mend }]
    : [{ ...base, id: 'bend/no-free-order', reason, mend }];
}

/** What would let the tube be bent where no order keeps clear; null where one does, or where the machine touches nothing. */
export function mendOf({ plain, proposed }: Rehearsal): SwingMend | null {
  const touched = proposed === null ? plain.find(({ hit }) => hit !== null) : undefined;
  return touched?.hit == null ? null : mendFor(touched.hit.solid);
}

function mendFor(solid: SolidId | null): SwingMend {
  if (solid?.part === 'floor') return { kind: 'raise-bender' };
  return solid?.part === 'room' ? { kind: 'clear-room', what: solid } : { kind: 'corners-apart' };
}
