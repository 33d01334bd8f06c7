/**
 * A member's centreline: straight lines between the nodes of its path, every inner corner rounded to the radius R that its
 * bend comes out with.
 *
 * Bend angle t is the angle between the directions before and after the corner; set-back R tan(t/2), arc R t; a straight
 * is what the set-backs leave of the line between two corners. A straight-through corner is no bend. Where set-backs
 * overlap the straight is negative: it is kept in the sums, so that a check can show it, and has no piece on the path.
 * Formulas: docs/maths/bend.md.
 */
import { angleBetween, signedAngle, type Radians } from '../geometry/angle.ts';
import { arcPiece, linePiece, type Path, type Piece } from '../geometry/path.ts';
import { DOUBLES_BACK, ROUNDING, STRAIGHT_THROUGH } from '../geometry/tolerance.ts';
import { addScaled, cross, distance, normalize, subtract, type Vec3 } from '../geometry/vector.ts';
import type { Bend } from './types.ts';

export interface Centreline {
  readonly route: readonly Vec3[];
  readonly corners: readonly Vec3[];
  readonly path: Path;
  readonly bends: readonly Bend[];
  readonly straights: readonly number[];
  readonly developedLength: number;
  readonly sharpCornerLength: number;
}

/** Why a route has no centreline, and at which of its places (0 = end A). */
export interface RouteTrouble {
  readonly at: number;
  readonly why: 'same-place' | 'doubles-back' | 'no-radius';
}

/** Centreline radius of a bend of this net angle, mm. */
export type RadiusAt = (angle: Radians) => number;

/** `radiusAt` is null for a member without a die. Answers the trouble if there is no such tube. */
export function solveCentreline(route: readonly Vec3[], radiusAt: RadiusAt | null): Centreline | RouteTrouble {
  const kept: Vec3[] = [route[0]!];
  for (let i = 1; i < route.length; i++) {
    if (distance(route[i - 1]!, route[i]!) <= ROUNDING) return { at: i, why: 'same-place' };
    const next = route[i + 1];
    if (next !== undefined) {
      const turn = angleBetween(subtract(route[i]!, kept.at(-1)!), subtract(next, route[i]!));
      if (turn > DOUBLES_BACK) return { at: i, why: 'doubles-back' };
      if (turn <= STRAIGHT_THROUGH) continue;
      if (radiusAt === null) return { at: i, why: 'no-radius' };
    }
    kept.push(route[i]!);
  }
  return { route, ...roundCorners(kept, radiusAt ?? (() => 0)) };
}

/** Unit directions along the tube into it, at end A and at end B. */
export function endDirections(corners: readonly Vec3[]): readonly [Vec3, Vec3] {
  return [normalize(subtract(corners[1]!, corners[0]!)), normalize(subtract(corners.at(-2)!, corners.at(-1)!))];
}

/** The line through these corners, of which each inner one bends: its radius by its angle, or by which it is, 0 = first. */
export function roundCorners(
  corners: readonly Vec3[],
  radiusAt: (angle: Radians, bend: number) => number,
): Omit<Centreline, 'route'> {
  const directions = corners.slice(1).map((corner, i) => normalize(subtract(corner, corners[i]!)));
  const legs = corners.slice(1).map((corner, i) => distance(corner, corners[i]!));
  const angles = directions.slice(1).map((direction, i) => angleBetween(directions[i]!, direction));
  const radii = angles.map((angle, i) => radiusAt(angle, i));
  const setBacks = angles.map((angle, i) => radii[i]! * Math.tan(angle / 2));
  const straights = legs.map((leg, i) => leg - (setBacks[i - 1] ?? 0) - (setBacks[i] ?? 0));

  const pieces: Piece[] = [];
  const bends: Bend[] = [];
  let at = 0;
  let here = corners[0]!;
  straights.forEach((straight, i) => {
    const tangent = i < angles.length ? addScaled(corners[i + 1]!, directions[i]!, -setBacks[i]!) : corners.at(-1)!;
    if (straight > ROUNDING) pieces.push(linePiece(here, tangent, at));
    at += straight;
    if (i === angles.length) return;
    const angle = angles[i]!;
    const radius = radii[i]!;
    const normal = normalize(cross(directions[i]!, directions[i + 1]!));
    const arc = arcPiece(tangent, directions[i]!, normal, radius, angle, at);
    pieces.push(arc);
    const before = bends.at(-1);
    bends.push({
      corner: corners[i + 1]!,
      angle,
      rotation: before === undefined ? 0 : signedAngle(before.normal, normal, directions[i]!),
      radius,
      setBack: setBacks[i]!,
      arc: arc.length,
      start: at,
      end: at + arc.length,
      centre: arc.centre,
      normal,
    });
    at += arc.length;
    // From the corner, not from the arc's own rounded end: errors do not add up along the tube.
    here = addScaled(corners[i + 1]!, directions[i + 1]!, setBacks[i]!);
  });
  return {
    corners,
    path: { pieces, length: at },
    bends,
    straights,
    developedLength: at,
    sharpCornerLength: legs.reduce((sum, leg) => sum + leg, 0),
  };
}
