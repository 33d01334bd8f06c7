/**
 * The places of the car that tubes are measured to: measured points, the mirror images of those that were measured on one side alone, and
 * body lines. Where a tube stands on the car steel is meant to be: what lies there is no trim and is left out, of a line that part of it.
 */
import { MEETING_DISTANCE, PAIR_NEAR } from '../geometry/tolerance.ts';
import { addScaled, distance, dot, equal, mirrored, subtract, type Vec3 } from '../geometry/vector.ts';
import type { BodyLine } from '../job/kinds/body-line.ts';
import type { Point } from '../job/kinds/point.ts';
import { bareId, isPrimed, primed, type BodyLineId, type PointRef } from '../job/reference.ts';
import type { Frame, SolvedTube } from '../solve/types.ts';
import { stretchBetween, type Stretch } from './stretch-gap.ts';

/** A measured point, or its mirror image; or a body line. */
export type Trim =
  | { readonly kind: 'point'; readonly id: PointRef }
  | { readonly kind: 'bodyLine'; readonly id: BodyLineId };

export interface TrimPlace {
  readonly trim: Trim;
  /** mm; null where nobody asks for any. */
  readonly wanted: number | null;
  /** mm of trim that lies over it: gaps are taken from its face. */
  readonly trimOver: number;
  /** What of it is measured to. */
  readonly stretches: readonly Stretch[];
}

/** Of the points and lines that are meant: points in the order of the job, each before its image; then lines. */
export function trimPlaces(
  { job, tubes }: Pick<Frame, 'job' | 'tubes'>,
  isMeant: (of: Point | BodyLine) => boolean = () => true,
): readonly TrimPlace[] {
  const [points, lines] = [job.points.filter(isMeant), job.bodyLines.filter(isMeant)];
  if (points.length + lines.length === 0) return [];
  const off = leftOut(standings(tubes));
  const hasImage = measuredOnce(job.points);
  const ofPoint = (id: PointRef, place: Vec3, { leastGap, trim }: Point): TrimPlace => ({
    trim: { kind: 'point', id },
    wanted: leastGap ?? null,
    trimOver: trim ?? 0,
    stretches: off(stretchBetween(place, place)),
  });
  const at = new Map<PointRef, Vec3>(job.points.map(({ id, position }) => [id, position]));
  const placeOf = (to: PointRef): Vec3 => (isPrimed(to) ? mirrored(at.get(bareId(to))!) : at.get(to)!);
  return [
    ...points.flatMap((point) => {
      const { id, position } = point;
      const own = ofPoint(id, position, point);
      return hasImage(point) ? [own, ofPoint(primed(id), mirrored(position), point)] : [own];
    }),
    ...lines.map(({ id, points: through, leastGap }): TrimPlace => {
      const places = through.map(placeOf);
      return {
        trim: { kind: 'bodyLine', id },
        wanted: leastGap ?? null,
        trimOver: 0,
        stretches: places.slice(1).flatMap((to, i) => off(stretchBetween(places[i]!, to))),
      };
    }),
  ];
}

/** Whether somebody asks for a gap there. */
export const isGapWanted = ({ leastGap }: Point | BodyLine): boolean => leastGap !== undefined;

/** Whether no point, itself among them, lies at the mirror image of a point. */
const measuredOnce =
  (points: readonly Point[]) =>
  ({ position }: Point): boolean => {
    const image = mirrored(position);
    return points.every((other) => distance(other.position, image) > PAIR_NEAR);
  };

/** Whether two are the same in value. */
export const samePlace = (a: TrimPlace, b: TrimPlace): boolean =>
  a.wanted === b.wanted &&
  a.trimOver === b.trimOver &&
  a.stretches.length === b.stretches.length &&
  a.stretches.every(({ from, to }, i) => equal(from, b.stretches[i]!.from) && equal(to, b.stretches[i]!.to));

/** Where a tube stands on the car, and how far round about. */
interface Standing {
  readonly place: Vec3;
  readonly reach: number;
}

/** Ends on a foot or a plate, as far as the tube is thick; and square ones, which may end on a point without either. */
const standings = (tubes: readonly SolvedTube[]): readonly Standing[] =>
  tubes.flatMap(({ ends, section }) =>
    ends.flatMap(({ fit, position }): Standing | readonly [] => {
      if (fit === 'foot' || fit === 'plate') return { place: position, reach: section.outerDiameter };
      return fit === 'square' ? { place: position, reach: MEETING_DISTANCE } : [];
    }),
  );

/** What takes out of a stretch all that lies where a tube stands. */
const leftOut =
  (standings: readonly Standing[]) =>
  (stretch: Stretch): readonly Stretch[] =>
    standings.reduce<readonly Stretch[]>((left, each) => left.flatMap((part) => outOf(part, each)), [stretch]);

/** The parts of a stretch that lie outside a ball. */
function outOf(stretch: Stretch, { place, reach }: Standing): readonly Stretch[] {
  const { from, to, line } = stretch;
  if (line === null) return distance(from, place) <= reach ? [] : [stretch];
  const along = dot(subtract(place, from), line.startTangent);
  const half = Math.sqrt(reach ** 2 - distance(addScaled(from, line.startTangent, along), place) ** 2);
  // Not a number where the line passes by the ball.
  if (!(half > 0) || along + half <= 0 || along - half >= line.length) return [stretch];
  const before = along - half <= 0 ? [] : [stretchBetween(from, addScaled(from, line.startTangent, along - half))];
  const after =
    along + half >= line.length ? [] : [stretchBetween(addScaled(from, line.startTangent, along + half), to)];
  return [...before, ...after];
}
