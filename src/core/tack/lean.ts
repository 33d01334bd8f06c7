/** How the tube that is set first stands: out of plumb by so much, and to which side. */
import type { Radians } from '../geometry/angle.ts';
import {
  addScaled,
  cross,
  dot,
  length,
  normalize,
  rejectFrom,
  subtract,
  Z_AXIS,
  type Vec3,
} from '../geometry/vector.ts';
import type { SolvedTube } from '../solve/types.ts';

export interface Lean {
  /** Of the plane of its bends from plumb, or of a straight tube's line; [0, pi/2]: what is level is pi/2, and leans to no side. */
  readonly angle: Radians;
  /** To which side its upper part leans; null where it stands plumb, or level. */
  readonly towards: 'front' | 'rear' | 'left' | 'right' | null;
  /** False of a tube that is straight or does not lie in one plane: then it is of the line between its ends. */
  readonly plane: boolean;
}

/** Radians: what a level does not show. */
const PLUMB = 0.0005;
/** mm. As layFlat has it. */
const FLAT = 0.1;

export function leanOf({ corners, bends }: SolvedTube): Lean {
  const normal = bends[0]?.normal;
  const flat =
    normal !== undefined && corners.every((corner) => Math.abs(dot(subtract(corner, corners[0]!), normal)) <= FLAT);
  if (!flat) {
    const way = normalize(subtract(corners.at(-1)!, corners[0]!));
    return lean(way[2] < 0 ? [-way[0], -way[1], -way[2]] : way, false);
  }
  // Up in the plane: in a level one there is no such way.
  const up = rejectFrom(Z_AXIS, normal);
  return length(up) < PLUMB ? { angle: Math.PI / 2, towards: null, plane: true } : lean(normalize(up), true);
}

function lean(up: Vec3, plane: boolean): Lean {
  const flat = addScaled(up, Z_AXIS, -up[2]);
  const angle = Math.atan2(length(cross(up, Z_AXIS)), up[2]);
  if (angle < PLUMB || angle > Math.PI / 2 - PLUMB) return { angle, towards: null, plane };
  const ahead = Math.abs(flat[0]) >= Math.abs(flat[1]);
  const towards = ahead ? (flat[0] > 0 ? 'front' : 'rear') : flat[1] > 0 ? 'left' : 'right';
  return { angle, towards, plane };
}
