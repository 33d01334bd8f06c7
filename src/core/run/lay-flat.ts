/**
 * A bent tube that lies flat, laid on its own plane: as it is drawn full size on a floor, the bent tube to be laid upon it. The origin
 * is end A's node; x runs as the tube's width is measured (check-dimensions.ts), y is up, on the side on which more of the tube lies. mm. Which face is seen does not matter to a flat tube: it can be turned over.
 */
import type { Radians } from '../geometry/angle.ts';
import { addScaled, cross, dot, scale, subtract, type Vec3 } from '../geometry/vector.ts';
import { measuredAlong } from './check-dimensions.ts';
import { sawnTube, reachOf } from './sawn-tube.ts';
import type { SolvedTube } from '../solve/types.ts';

export interface FlatPlace {
  readonly x: number;
  readonly y: number;
}

export interface FlatLine {
  readonly kind: 'line';
  readonly from: FlatPlace;
  readonly to: FlatPlace;
}

export interface FlatArc {
  readonly kind: 'arc';
  readonly centre: FlatPlace;
  readonly radius: number;
  /** Of the spokes to its two ends, from the x axis, anticlockwise from `low` to `high` whichever way the tube runs. */
  readonly low: Radians;
  readonly high: Radians;
  /** Turns left on its way from A to B. */
  readonly left: boolean;
}

export interface FlatTube {
  readonly pieces: readonly (FlatLine | FlatArc)[];
  /** How far its outside reaches from sawn end to sawn end, before any cope is cut: as its check dimensions go over all. */
  readonly outside: { readonly left: number; readonly right: number; readonly bottom: number; readonly top: number };
  /** mm that its outside reaches from end A's node in a direction of the plane, from the x axis, anticlockwise. */
  readonly reach: (direction: Radians) => number;
  /** Of a place in the car to the plane; what stands out of it falls square upon it. */
  readonly onPlane: (place: Vec3) => FlatPlace;
  /** Unit normal of the plane, towards the eye. */
  readonly toEye: Vec3;
}

/** mm. A tube whose corners all lie as near to one plane lies flat. */
const FLAT = 0.1;

/** Null for a straight tube, and for one that does not lie flat. */
export function layFlat(tube: SolvedTube): FlatTube | null {
  const { bends, corners, path } = tube;
  const { pieces: whole, outerDiameter } = sawnTube(tube);
  const right = measuredAlong(whole);
  if (right === null) return null;
  const start = corners[0]!;
  const { normal } = bends[0]!;
  if (corners.some((corner) => Math.abs(dot(subtract(corner, start), normal)) > FLAT)) return null;
  const across = cross(normal, right);
  const lean = corners.reduce((sum, corner) => sum + dot(subtract(corner, start), across), 0);
  const up = lean < 0 ? scale(across, -1) : across;
  const toEye = cross(right, up);
  const onPlane = (place: Vec3): FlatPlace => {
    const from = subtract(place, start);
    return { x: dot(from, right), y: dot(from, up) };
  };
  const pieces = path.pieces.map((piece): FlatLine | FlatArc => {
    if (piece.kind === 'line') return { kind: 'line', from: onPlane(piece.from), to: onPlane(piece.to) };
    const centre = onPlane(piece.centre);
    const left = dot(piece.normal, toEye) > 0;
    const first = onPlane(left ? piece.from : piece.to);
    const low = Math.atan2(first.y - centre.y, first.x - centre.x);
    return { kind: 'arc', centre, radius: piece.radius, low, high: low + piece.angle, left };
  });
  const reach = (direction: Radians): number => {
    const way = addScaled(scale(right, Math.cos(direction)), up, Math.sin(direction));
    return reachOf(whole, outerDiameter / 2, way) - dot(start, way);
  };
  const quarter = Math.PI / 2;
  const outside = { left: -reach(2 * quarter), right: reach(0), bottom: -reach(-quarter), top: reach(quarter) };
  return { pieces, outside, reach, onPlane, toEye };
}

/** Angles at which an arc reaches farthest right, up, left and down, where it does. */
export function extremesOf(
  { centre, low, high }: Pick<FlatArc, 'centre' | 'low' | 'high'>,
  radius: number,
): FlatPlace[] {
  const quarter = Math.PI / 2;
  const first = Math.ceil(low / quarter);
  const count = Math.max(0, Math.floor(high / quarter) - first + 1);
  const angles = [low, high, ...Array.from({ length: count }, (_, i) => (first + i) * quarter)];
  return angles.map((angle) => ({ x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) }));
}
