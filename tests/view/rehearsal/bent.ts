/** A tube with four bends out of one plane, on a die whose bender is set up; and orders of bending it, laid by hand. */
import { isBendable, type BendableTube } from '../../../src/core/rehearse/bendable.ts';
import type { RehearsedStep } from '../../../src/core/rehearse/types.ts';
import { derived, tube } from '../../core/frame.ts';
import { BENDER, DIE } from '../../core/rehearse/tubes.ts';

/** Corners chosen so that no two bend planes are the same. */
export function bentTube(turns: 'left' | 'right' = 'left'): BendableTube {
  const nodes = {
    a: [0, 0, 0],
    b: [0, 0, 900],
    c: [700, 0, 1200],
    d: [1300, 400, 1300],
    e: [1800, 400, 900],
    f: [1900, 0, 300],
  };
  const frame = derived({
    dies: [{ ...DIE, bender: { ...BENDER, turns } }],
    nodes,
    members: [{ id: 't', path: Object.keys(nodes) }],
  });
  const found = tube(frame, 't');
  if (!isBendable(found)) throw new Error('the tube has no bender');
  return found;
}

/** Steps in the order of the bends given, each with the end in front; the rotation is read from the bend named. */
export const orderOf = (
  from: BendableTube,
  order: readonly (readonly [bend: number, front: 'A' | 'B', from: number | null])[],
): readonly RehearsedStep[] =>
  order.map(([bend, front, rotationFrom]) => {
    const net = from.bends[bend - 1]!.angle;
    return {
      bend,
      front,
      rotationFrom,
      rotation: 0,
      net,
      pullTo: net * 1.03,
      pulled: net * 1.03,
      hit: null,
      cannotHold: null,
    };
  });
