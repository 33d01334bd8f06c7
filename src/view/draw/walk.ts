/** By keys: from one named place near the aim to the next, and in steps along the car's axes. */
import { ROUNDING } from '../../core/geometry/tolerance.ts';
import { distance } from '../../core/geometry/vector.ts';
import type { AxisNumber, Ground } from '../../core/shape/draw/ground.ts';
import type { Snap } from '../../core/shape/draw/snaps.ts';
import type { LengthUnit } from '../../core/units/length.ts';
import type { Projection } from '../camera/projection.ts';
import { stepOf } from '../gizmo/snap.ts';
import { inSpace, isOwner, ownerOf, withAxis, type Targets } from './aim.ts';

/** So many of the named places count as near: Tab goes on out of the bay after the last. */
const MOST = 12;

/** The named places nearest to a pixel of those in the bay, one at each place, and none at `from`, where one is. */
export function placesNear({ named }: Targets, view: Projection, from: Snap | null): readonly Snap[] {
  const pixel = from === null ? { x: view.width / 2, y: view.height / 2 } : view.toScreen(from.at);
  const seen = named.flatMap((snap) => {
    const { x, y } = view.toScreen(snap.at);
    const isIn = x >= 0 && y >= 0 && x <= view.width && y <= view.height;
    return isIn ? [{ snap, away: Math.hypot(x - pixel.x, y - pixel.y) }] : [];
  });
  seen.sort((a, b) => a.away - b.away);
  const near: Snap[] = [];
  for (const { snap } of seen) {
    if (near.length === MOST) break;
    const taken = from === null ? near : [from, ...near];
    if (taken.every(({ at }) => distance(at, snap.at) > ROUNDING)) near.push(snap);
  }
  return near;
}

/** Forward and back, left and right, up and down: as a selected node is moved by keys. */
const WAYS: Readonly<Record<string, readonly [axis: AxisNumber, sense: 1 | -1]>> = {
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
  ArrowLeft: [1, 1],
  ArrowRight: [1, -1],
  PageUp: [2, 1],
  PageDown: [2, -1],
};

export const isStep = (key: string): boolean => Object.hasOwn(WAYS, key);

/** 1 in or 10 mm; fine the step of a pointer. */
const stepLength = (unit: LengthUnit, fine: boolean): number =>
  fine ? stepOf(unit, false) : unit === 'in' ? 25.4 : 10;

/**
 * The place a step from `from`, whose other two coordinates are owned as before, or by the place itself. A step that would come past a
 * coordinate of a place that is meant, or past the centre plane, ends there.
 */
export function stepped(targets: Targets, from: Snap, key: string, unit: LengthUnit, fine: boolean): Snap {
  const [axis, sense] = WAYS[key]!;
  const start = from.at[axis];
  let far = stepLength(unit, fine);
  let owner: Ground | null = null;
  let value = start + sense * far;
  const stop = (at: number, whose: Ground | null): void => {
    const away = (at - start) * sense;
    if (away <= ROUNDING || away > far + ROUNDING) return;
    [far, value, owner] = [away, at, whose];
  };
  if (axis === 1) stop(0, null);
  for (const each of targets.meant) stop(each.at[axis], ownerOf(each, axis));
  const { ground } = from;
  const itself = isOwner(targets, ground) ? ground : null;
  const by = ground.kind === 'space' && itself === null ? ground.by : undefined;
  return inSpace(withAxis(from.at, axis, value), withAxis(by ?? [itself, itself, itself], axis, owner));
}
