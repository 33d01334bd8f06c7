/** The centreline of a tube that is given as it is made: straights, rotations, angles, radii. The other way round from centreline.ts. */
import { arcPiece, linePiece, type Piece } from '../geometry/path.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import { addScaled, cross, normalize, subtract, X_AXIS, Y_AXIS, type Vec3 } from '../geometry/vector.ts';
import type { BuiltTube } from './as-built.ts';
import type { Centreline } from './centreline.ts';
import { rollOut, type RollStart } from './roll-out.ts';
import type { Bend } from './types.ts';

/** From `start`, end A's node. A straight below zero has no piece on the path, as where bends are drawn that overlap. */
export function rolledCentreline(start: RollStart, { bends, tail }: BuiltTube): Omit<Centreline, 'route'> {
  const places = rollOut(start, bends, tail);
  const corners: Vec3[] = [start.position];
  const pieces: Piece[] = [];
  const made: Bend[] = [];
  let at = 0;
  let setBackBefore = 0;
  let sharpCornerLength = 0;
  let { position, direction } = start;
  const straightOn = (straight: number): void => {
    const to = addScaled(position, direction, straight);
    if (straight > ROUNDING) pieces.push(linePiece(position, to, at));
    at += straight;
    position = to;
  };
  bends.forEach(({ straight, rotation, angle, radius }, i) => {
    straightOn(straight);
    const { normal, ...after } = places[i]!;
    const arc = arcPiece(position, direction, normal, radius, angle, at);
    const setBack = radius * Math.tan(angle / 2);
    const corner = addScaled(position, direction, setBack);
    pieces.push(arc);
    corners.push(corner);
    sharpCornerLength += setBackBefore + straight + setBack;
    setBackBefore = setBack;
    made.push({
      corner,
      angle,
      rotation: i === 0 ? 0 : rotation,
      radius,
      setBack,
      arc: arc.length,
      start: at,
      end: at + arc.length,
      centre: arc.centre,
      normal,
    });
    at += arc.length;
    ({ position, direction } = after);
  });
  straightOn(tail);
  corners.push(position);
  return {
    corners,
    path: { pieces, length: at },
    bends: made,
    straights: [...bends.map(({ straight }) => straight), tail],
    developedLength: at,
    sharpCornerLength: sharpCornerLength + setBackBefore + tail,
  };
}

/** Where a tube that is laid out begins, and the plane of its first bend. */
export function startOf({ corners, bends }: Pick<Centreline, 'corners' | 'bends'>): RollStart {
  const direction = normalize(subtract(corners[1]!, corners[0]!));
  return { position: corners[0]!, direction, normal: bends[0]?.normal ?? squareTo(direction) };
}

/** Of a straight tube any will do. */
const squareTo = (direction: Vec3): Vec3 => normalize(cross(direction, Math.abs(direction[0]) < 0.5 ? X_AXIS : Y_AXIS));
