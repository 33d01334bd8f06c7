/**
 * The car in the plane of a hoop: where the body lines come through the plane that the tube is bent in, exact on each line, and how far each of
 * these places is from the tube. Those outside the hoop, joined from the floor up on either side, are the car's outline there.
 */
import { nearestOnPath } from '../geometry/path.ts';
import { PAIR_NEAR, ROUNDING } from '../geometry/tolerance.ts';
import { add, cross, distance, dot, mirrored, scale, subtract, type Vec3 } from '../geometry/vector.ts';
import { bareId, isPrimed, type BodyLineId, type PointRef } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import type { SolvedTube } from '../solve/types.ts';
import type { FlatPlace } from './lay-flat.ts';
import { planeOfTube } from './tube-plane.ts';

export interface BodyCrossing {
  readonly line: BodyLineId;
  readonly name: string;
  /** Of a line that was measured on the other side alone: its mirror image. */
  readonly isImage: boolean;
  readonly at: Vec3;
  /** On the tube's plane, as layFlat lays it. */
  readonly flat: FlatPlace;
  /** mm to the tube's outside, along its centreline whole and uncut; negative in the tube. */
  readonly gap: number;
  /** On the side of the tube that its first bend turns away from: of a hoop outside it. */
  readonly isOutside: boolean;
}

/** Of a bent tube that lies flat and stands across the car, more upright than level, in the order of the outline; none of any other. `job` has its points where they were measured. */
export function bodySection(
  { points, bodyLines }: Pick<Job, 'points' | 'bodyLines'>,
  tube: SolvedTube,
): readonly BodyCrossing[] {
  const plane = planeOfTube(tube);
  const isAcross = tube.corners.some(([, y]) => y > 0) && tube.corners.some(([, y]) => y < 0);
  if (plane === null || !isAcross || Math.abs(plane.normal[0]) <= Math.abs(plane.normal[2])) return [];
  const at = new Map<PointRef, Vec3>(points.map(({ id, position }) => [id, position]));
  const lines = bodyLines.map((line) => ({
    ...line,
    places: line.points.map((to): Vec3 => (isPrimed(to) ? mirrored(at.get(bareId(to))!) : at.get(to)!)),
  }));
  const { normal } = tube.bends[0]!;
  const crossing = (line: BodyLineId, name: string, isImage: boolean, place: Vec3): BodyCrossing => {
    const near = nearestOnPath(tube.path, place, true);
    const isInside = dot(cross(near.tangent, subtract(place, near.point)), normal) > 0;
    const gap = nearestOnPath(tube.path, place).distance - tube.section.outerDiameter / 2;
    return { line, name, isImage, at: place, flat: plane.flat.onPlane(place), gap, isOutside: !isInside };
  };
  const own = lines.flatMap(({ id, name, places }) =>
    placesThrough(places, plane.point, plane.normal).map((place) => crossing(id, name, false, place)),
  );
  const images = lines.flatMap(({ id, name, places }) =>
    placesThrough(places.map(mirrored), plane.point, plane.normal)
      .filter((place) => own.every((each) => distance(each.at, place) > PAIR_NEAR))
      .map((place) => crossing(id, name, true, place)),
  );
  return inOrder([...own, ...images]);
}

/** Up on the left, then down on the right. */
const inOrder = (crossings: readonly BodyCrossing[]): readonly BodyCrossing[] => [
  ...crossings.filter(({ at }) => at[1] > 0).toSorted((one, other) => one.at[2] - other.at[2]),
  ...crossings.filter(({ at }) => !(at[1] > 0)).toSorted((one, other) => other.at[2] - one.at[2]),
];

/** Where the line through these places comes to the plane, in its order, none twice: a stretch in the plane is there at both its ends. */
function placesThrough(places: readonly Vec3[], point: Vec3, normal: Vec3): readonly Vec3[] {
  // What is off the plane by rounding alone lies in it.
  const heights = places.map((place) => {
    const off = dot(subtract(place, point), normal);
    return Math.abs(off) <= ROUNDING ? 0 : off;
  });
  return places.flatMap((place, i) => {
    const here = heights[i]!;
    const next = heights[i + 1];
    const own = here === 0 ? [place] : [];
    if (next === undefined || here * next >= 0) return own;
    const along = here / (here - next);
    return [...own, add(scale(place, 1 - along), scale(places[i + 1]!, along))];
  });
}

/** The tubes that have such a section, in build order. */
export const hoopsInBody = (
  job: Pick<Job, 'points' | 'bodyLines'>,
  tubes: readonly SolvedTube[],
): readonly { readonly tube: SolvedTube; readonly crossings: readonly BodyCrossing[] }[] =>
  tubes.map((tube) => ({ tube, crossings: bodySection(job, tube) })).filter(({ crossings }) => crossings.length > 0);
