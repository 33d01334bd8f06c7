/**
 * A joint drawn apart: every tube that ends there is drawn back along itself, the later it is fitted the farther, so that each cut is seen, and
 * in which order they are made.
 */
import type { Derived } from '../../core/derive.ts';
import { addScaled, scale, type Vec3 } from '../../core/geometry/vector.ts';
import type { NodeRef, TubeRef } from '../../core/job/reference.ts';
import { isEnd, jointAt } from '../../core/shape/joint-order.ts';
import { tubesOfBar } from '../../core/solve/bar-tubes.ts';

export interface DrawnApart {
  /** By how much a tube is drawn away from where it is, mm. */
  readonly shifts: ReadonlyMap<TubeRef, Vec3>;
  /** Which is fitted as the how-manieth, from 1, and where that is written. */
  readonly order: readonly { readonly nth: number; readonly at: Vec3 }[];
}

/** Outer diameters of the thickest tube there, by which the first is drawn back; each later one half as much again. */
const FIRST = 1.5;

export function drawnApart(derived: Derived, node: NodeRef): DrawnApart {
  const joint = jointAt(derived, node);
  const widest = Math.max(0, ...joint.map(({ bar }) => bar.section.outerDiameter));
  const place = derived.nodes.get(node);
  const shifts = new Map<TubeRef, Vec3>();
  const order: DrawnApart['order'][number][] = [];
  let ending = 0;
  joint.forEach((one, index) => {
    if (!isEnd(one)) {
      if (place !== undefined) order.push({ nth: index + 1, at: place });
      return;
    }
    const { position, direction } = one.bar.ends[one.which];
    const back = widest * FIRST * (1 + ending / 2);
    ending += 1;
    const tube = tubesOfBar(derived.byId, one.bar.id).at(one.which === 0 ? 0 : -1);
    if (tube !== undefined) shifts.set(tube.id, scale(direction, back));
    order.push({ nth: index + 1, at: addScaled(position, direction, back + widest) });
  });
  return { shifts, order };
}
