/**
 * A bar as it came off the bender, end A where it is drawn. Marks are absolute and the tube keeps its length: a bend turned further takes
 * its arc from the straight after it, one that is marked too far on lengthens the straight before it (docs/maths/marks.md).
 */
import { mirroredPath, placeAt, type Path, type Piece } from '../geometry/path.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import { mirrored, normalize, rejectFrom, scale, type Vec3 } from '../geometry/vector.ts';
import { rolledCentreline, startOf } from '../solve/rolled-centreline.ts';
import type { RolledBend } from '../solve/roll-out.ts';
import type { Bar, Bend } from '../solve/types.ts';
import type { BendError } from './sources.ts';

/** What others stand on and are cut by. */
export interface Shape {
  readonly path: Path;
  readonly bends: readonly Bend[];
  readonly developedLength: number;
}

/** `errors` by the number of the bend; the bar's own shape where there are none. */
export function asBent(bar: Bar, errors: ReadonlyMap<number, BendError> | undefined): Shape {
  if (errors === undefined) return bar;
  let behind = 0;
  const rolled = bar.bends.map((drawn, i): RolledBend => {
    const { angle, rotation, mark } = errors.get(i + 1) ?? { angle: 0, rotation: 0, mark: 0 };
    const straight = drawn.start + mark - behind;
    const turned = drawn.angle + angle;
    behind = drawn.start + mark + drawn.radius * turned;
    return { straight, rotation: drawn.rotation + rotation, angle: turned, radius: drawn.radius };
  });
  // The plane of the first bend is where the roll starts.
  rolled[0] = { ...rolled[0]!, rotation: 0 };
  const tail = bar.developedLength - behind;
  const { path, bends } = rolledCentreline(startOf(bar), { bends: rolled, tail });
  return { path, bends, developedLength: bar.developedLength };
}

/** How the tube's steel lies at a place of its length: unit vectors, the normal that of the bend before it, or of the first. */
export interface Steel {
  readonly point: Vec3;
  readonly tangent: Vec3;
  readonly normal: Vec3;
}

/** `square`: of a straight bar, which has no bend, any direction square to it. */
export function steelAt({ path, bends }: Shape, at: number, square: Vec3): Steel {
  const { point, tangent } = placeAt(path, at);
  // At a bend's very start its own normal would do as well.
  const bend = bends.findLast(({ start }) => start < at - ROUNDING) ?? bends[0];
  // Of bends that overlap the one may not be square to the other's place.
  return { point, tangent, normal: normalize(rejectFrom(bend?.normal ?? square, tangent)) };
}

/** Of a rigid body: where it takes a place, and a direction. */
export interface Motion {
  readonly place: (place: Vec3) => Vec3;
  readonly turn: (direction: Vec3) => Vec3;
}

/** Where the motion takes it. */
export const moved = ({ path, bends, developedLength }: Shape, { place, turn }: Motion): Shape => ({
  developedLength,
  path: {
    length: path.length,
    pieces: path.pieces.map((piece): Piece => {
      const ends = { from: place(piece.from), to: place(piece.to) };
      const [startTangent, endTangent] = [turn(piece.startTangent), turn(piece.endTangent)];
      return piece.kind === 'line'
        ? { ...piece, ...ends, startTangent, endTangent }
        : { ...piece, ...ends, startTangent, endTangent, centre: place(piece.centre), normal: turn(piece.normal) };
    }),
  },
  bends: bends.map((bend) => ({
    ...bend,
    corner: place(bend.corner),
    centre: place(bend.centre),
    normal: turn(bend.normal),
  })),
});

/** Its mirror image in y = 0; what a plane turns about changes its sense besides. */
export const reflected = ({ path, bends, developedLength }: Shape): Shape => ({
  developedLength,
  path: mirroredPath(path),
  bends: bends.map((bend) => ({
    ...bend,
    corner: mirrored(bend.corner),
    centre: mirrored(bend.centre),
    normal: scale(mirrored(bend.normal), -1),
  })),
});
