/** What a place may refer to, already solved, and what comes of placing. */
import type { Path } from '../geometry/path.ts';
import { AXIS_INDEX, mirrored, type Axis, type Vec3 } from '../geometry/vector.ts';
import type { Point } from '../job/kinds/point.ts';
import type { Coordinate } from '../job/places/coordinate.ts';
import { bareId, isPrimed, type NodeId, type NodeRef, type PointRef, type TubeRef } from '../job/reference.ts';
import type { Bend } from './types.ts';

export interface Solved {
  point(id: string): Point;
  node(reference: NodeRef): Vec3;
  tube(reference: TubeRef): { readonly path: Path; readonly bends: readonly Bend[]; readonly developedLength: number };
  /** mm across the widest tube through the node; known before anything is placed. */
  thickest(id: NodeId): number;
}

/** A place; or the trouble, with the field of `at` that it stands in. */
export type Placing = { readonly position: Vec3 } | { readonly trouble: string; readonly field: string };

/** Where the point, or with a prime its mirror image, is. */
export function pointAt(reference: PointRef, solved: Pick<Solved, 'point'>): Vec3 {
  const { position } = solved.point(bareId(reference));
  return isPrimed(reference) ? mirrored(position) : position;
}

/** The coordinate along that axis, mm: the number, or what the node or point has there and so much more. */
export function coordinateOf(given: Coordinate, axis: Axis, solved: Pick<Solved, 'point' | 'node'>): number {
  if (given.value !== undefined) return given.value;
  const followed = given.node !== undefined ? solved.node(given.node) : pointAt(given.point, solved);
  return followed[AXIS_INDEX[axis]] + given.plus;
}
