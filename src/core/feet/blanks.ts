/**
 * What a foot is cut from: its flat pieces, mm, places from the middle of the foot's plate, along and across. A box is four walls under its
 * plate, the two long ones over its whole side and the two short ones between them; level below, whatever the car is like there.
 */
import type { Foot, Hole } from '../job/kinds/foot.ts';
import { unfolded, type Unfolded } from './bend-allowance.ts';

export interface Blank {
  readonly part: 'plate' | 'top' | 'long-wall' | 'short-wall';
  /** So many go into one foot. */
  readonly count: number;
  readonly thickness: number;
  /** Of a plate least and greatest along, then across; of a wall from 0: along the floor, then up. */
  readonly along: readonly [number, number];
  readonly across: readonly [number, number];
  readonly holes: readonly Hole[];
  readonly bend: Unfolded | null;
}

/** The pieces of one foot. */
export function blanksOf(foot: Foot): readonly Blank[] {
  if (foot.kind === 'plate') return [plateOf(foot)];
  const wall = wallOf(foot);
  const sides = [Math.max(...foot.size), Math.min(...foot.size) - 2 * wall] as const;
  const walls = sides.map((long, i): Blank => ({
    part: i === 0 ? 'long-wall' : 'short-wall',
    count: 2,
    thickness: wall,
    along: [0, long],
    across: [0, foot.height],
    holes: [],
    bend: null,
  }));
  return [{ ...plateOf(foot), part: 'top' }, ...walls];
}

/** Thickness of a box's walls, mm. */
export const wallOf = (foot: Extract<Foot, { kind: 'box' }>): number => foot.wall ?? foot.thickness;

function plateOf(foot: Foot): Blank {
  const bend = unfolded(foot);
  const span = (axis: 0 | 1): readonly [number, number] => {
    const half = foot.size[axis] / 2;
    const [less, more] = bend?.axis !== axis ? [0, 0] : bend.kink.at > 0 ? [0, bend.shift] : [bend.shift, 0];
    return [-half + less, half + more];
  };
  return {
    part: 'plate',
    count: 1,
    thickness: foot.thickness,
    along: span(0),
    across: span(1),
    holes: (foot.holes ?? []).map((hole) => ({ ...hole, at: flatPlace(bend, hole.at) })),
    bend,
  };
}

/** Of a place of the plate: moved where it lies beyond the kink. */
export function flatPlace(bend: Unfolded | null, at: Hole['at']): Hole['at'] {
  if (bend === null) return at;
  const { axis, kink, shift } = bend;
  const beyond = kink.at > 0 ? at[axis] > kink.at : at[axis] < kink.at;
  return beyond ? (at.with(axis, at[axis] + shift) as unknown as Hole['at']) : at;
}
