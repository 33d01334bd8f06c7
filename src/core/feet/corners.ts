/** The corners of a foot's face on the car, the sharp line of a kink, and its holes, in car axes. */
import { toRadians } from '../geometry/angle.ts';
import { subtract, type Vec3 } from '../geometry/vector.ts';
import { kinkAxis } from '../job/kinds/kink.ts';
import type { Foot } from '../job/kinds/foot.ts';
import { inCar, type Stand } from './stand.ts';

/**
 * Four places, mm: along and across both greatest, then round by least along, least of both, least across. What lies beyond a kink lies in
 * the second plane.
 */
export const footCorners = (stand: Stand): readonly Vec3[] => {
  const [a, c] = [stand.foot.size[0] / 2, stand.foot.size[1] / 2];
  const round = [
    [a, c],
    [-a, c],
    [-a, -c],
    [a, -c],
  ] as const;
  return round.map((at) => inCar(stand, overKink(stand.foot, at)));
};

/** Both ends of the line on which the car's two planes meet, mm, that with the lesser coordinate first; null without a kink. */
export function kinkLine(stand: Stand): readonly [Vec3, Vec3] | null {
  const { foot } = stand;
  if (foot.kind !== 'plate' || foot.kink === undefined) return null;
  const { at } = foot.kink;
  const axis = kinkAxis(foot.kink);
  const half = foot.size[axis === 0 ? 1 : 0] / 2;
  const end = (side: number): Vec3 => inCar(stand, axis === 0 ? [at, side, 0] : [side, at, 0]);
  return [end(-half), end(half)];
}

/** Where a hole goes through the steel, and its way out of it. */
export interface Drilled {
  /** On the face that is under it: of a plate the one on the car, of a box the lower face of its plate; car axes, mm. */
  readonly from: Vec3;
  /** Unit, square to the steel there. */
  readonly direction: Vec3;
  readonly diameter: number;
}

/** The foot's holes, in its order. */
export const drilledHoles = (stand: Stand): readonly Drilled[] => {
  const { foot } = stand;
  const under = foot.kind === 'box' ? foot.height : 0;
  return (foot.holes ?? []).map(({ at, diameter }) => {
    const [a, c, up] = overKink(foot, at);
    const from = inCar(stand, [a, c, up + under]);
    const [na, nc, nUp] = squareTo(foot, at);
    const direction = subtract(inCar(stand, [a + na, c + nc, up + under + nUp]), from);
    return { from, direction, diameter };
  });
};

/** Out of the steel at a place, towards the tube's side: the foot's normal, beyond a kink turned with the plate. */
function squareTo(foot: Foot, at: readonly [number, number]): Vec3 {
  if (foot.kind !== 'plate' || foot.kink === undefined) return [0, 0, 1];
  const { kink } = foot;
  const axis = kinkAxis(kink);
  const side = Math.sign(kink.at);
  if (side * (at[axis] - kink.at) <= 0) return [0, 0, 1];
  const turn = toRadians(kink.angle);
  const out = side * Math.sin(turn);
  return axis === 0 ? [out, 0, Math.cos(turn)] : [0, out, Math.cos(turn)];
}

/** A place of the face on the car, laid over the kink's sharp line, as [along, across, up] of the foot. */
function overKink(foot: Foot, at: readonly [number, number]): Vec3 {
  if (foot.kind !== 'plate' || foot.kink === undefined) return [at[0], at[1], 0];
  const { kink } = foot;
  const axis = kinkAxis(kink);
  const beyond = Math.max(0, Math.sign(kink.at) * (at[axis] - kink.at));
  const turn = toRadians(kink.angle);
  const out = at[axis] - Math.sign(kink.at) * beyond * (1 - Math.cos(turn));
  const up = -beyond * Math.sin(turn);
  return axis === 0 ? [out, at[1], up] : [at[0], out, up];
}
