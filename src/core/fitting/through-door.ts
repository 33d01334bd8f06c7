/**
 * What opening a bent tube goes through, laid flat and pushed straight in its own plane. mm.
 *
 * The tube is taken as the blank after bending: from tip to tip, with what is left on its ends, these cut square, the wall round its
 * centreline. A tube is flat where its ends and sharp corners lie between two planes no more than FLAT apart, laid as near as they go (least-thickness.ts). Its outline in
 * that plane has a
 * least width, over all turns about the normal (least-width.ts): pushed square to the direction of that width it goes through any slit so
 * wide and as thick as the tube. Turned while it comes in, or led in along itself end first, it may go through less: that is not worked out.
 */
import { outsideOf } from '../gaps/outside.ts';
import type { Piece } from '../geometry/path.ts';
import { addScaled, cross, dot, subtract, type Vec3 } from '../geometry/vector.ts';
import type { TubeRef } from '../job/reference.ts';
import { remembered } from '../remembered.ts';
import type { Frame, SolvedTube } from '../solve/types.ts';
import { leastThickness } from './least-thickness.ts';
import { leastWidth, WHOLE_TURN, type Round } from './least-width.ts';

export interface Slit {
  readonly tube: TubeRef;
  /** How far apart two planes are that hold its ends and sharp corners, at the least: as thick as its centreline lies on a floor, turned as it lies thinnest. */
  readonly outOfFlat: number;
  /** Of the outline in that plane; null where the tube is not flat. */
  readonly width: number | null;
  /** The outer diameter, and what the centreline lies out of the plane. */
  readonly thickness: number;
}

/** mm. No more than a tube is out of flat on the floor of a shop, and is pressed flat. */
export const FLAT = 2;

/** Of a tube with a bend; null of a straight one. */
export const slitOf: (tube: SolvedTube) => Slit | null = remembered((tube) => {
  const { thickness: outOfFlat, normal } = leastThickness(tube.corners);
  if (normal === null) return null;
  const thickness = tube.section.outerDiameter + outOfFlat;
  const width = outOfFlat > FLAT ? null : leastWidth(outlineOf(tube, normal)).width;
  return { tube: tube.id, outOfFlat, width, thickness };
});

/** Of all that are bent, in build order; of a tube and its mirror image once. */
export const slitsOf = ({ tubes }: Pick<Frame, 'tubes'>): readonly Slit[] =>
  tubes.flatMap((tube) => (tube.twinOf === null ? (slitOf(tube) ?? []) : []));

/** In the plane square to the normal. */
function outlineOf(tube: SolvedTube, normal: Vec3): readonly Round[] {
  const { pieces, radius } = outsideOf(tube);
  const first = pieces[0]!;
  const axes = [first.startTangent, cross(normal, first.startTangent)] as const;
  const flat = (p: Vec3): [number, number] => [dot(p, axes[0]), dot(p, axes[1])];
  const point = (p: Vec3): Round => ({ centre: flat(p), radius: 0, from: 0, turn: WHOLE_TURN });
  const both = (p: Vec3, tangent: Vec3): readonly Round[] => {
    const aside = cross(normal, tangent);
    return [point(addScaled(p, aside, radius)), point(addScaled(p, aside, -radius))];
  };
  const last = pieces.at(-1)!;
  const [leftA, leftB] = tube.ends.map(({ allowance }) => allowance) as [number, number];
  return [
    ...both(addScaled(first.from, first.startTangent, -leftA), first.startTangent),
    ...pieces.flatMap((piece) => [
      ...both(piece.from, piece.startTangent),
      ...both(piece.to, piece.endTangent),
      ...arcOf(piece, normal, flat, radius),
    ]),
    ...both(addScaled(last.to, last.endTangent, leftB), last.endTangent),
  ];
}

/** The wall on the outside of a bend. */
function arcOf(piece: Piece, normal: Vec3, flat: (p: Vec3) => [number, number], radius: number): readonly Round[] {
  if (piece.kind !== 'arc') return [];
  const turnsLeft = dot(piece.normal, normal) > 0;
  const [x, y] = flat(subtract(turnsLeft ? piece.from : piece.to, piece.centre));
  return [{ centre: flat(piece.centre), radius: piece.radius + radius, from: Math.atan2(y, x), turn: piece.angle }];
}
