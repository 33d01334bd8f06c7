/**
 * Where a tube was measured in the car, and how it lies by that: the figures hold, and what they leave free is the best fit to the drawing. The places
 * are on its centreline as it runs between its nodes: either end, and half way along it.
 */
import { fitToFigures, movesOfFigures, type PlaceFigure } from '../geometry/rigid-figures.ts';
import { rigidFit, type RigidMotion } from '../geometry/rigid-motion.ts';
import { placeAt } from '../geometry/path.ts';
import { AXIS_INDEX, type Axis, type Vec3 } from '../geometry/vector.ts';
import type { BentTube, SeatPlace } from '../job/kinds/bent.ts';
import type { Point } from '../job/kinds/point.ts';
import type { Centreline } from './centreline.ts';
import { pointAt, type Solved } from './solved.ts';

/** One coordinate of a place of the tube, as it was measured; mm, car axes. */
export interface SeatFigure {
  readonly at: SeatPlace;
  readonly axis: Axis;
  readonly value: number;
}

/** What was measured of where it stands, by the points of the job: of each place x, y, z as far as they are known. */
export function seatFigures({ seat = [] }: BentTube, points: readonly Point[]): readonly SeatFigure[] {
  const known: Pick<Solved, 'point'> = { point: (id) => points.find((point) => point.id === id)! };
  return seat.flatMap((measured) => {
    const point = measured.point === undefined ? null : pointAt(measured.point, known);
    return AXES.flatMap((axis) => {
      const value = point === null ? measured[axis] : point[AXIS_INDEX[axis]];
      return value === undefined ? [] : [{ at: measured.at, axis, value }];
    });
  });
}

const AXES = ['x', 'y', 'z'] as const;

/** Whether both say the same. */
export const sameFigures = (a: readonly SeatFigure[], b: readonly SeatFigure[]): boolean =>
  a.length === b.length &&
  a.every(({ at, axis, value }, i) => at === b[i]!.at && axis === b[i]!.axis && value === b[i]!.value);

/** Where on the tube that is. */
export const seatPlace = ({ path }: Pick<Centreline, 'path'>, at: SeatPlace): Vec3 =>
  placeAt(path, at === 'A' ? 0 : at === 'B' ? path.length : path.length / 2).point;

/** How the tube is moved to where it stands; `corners` are those of the drawing, as many as its own. */
export function seated(
  tube: Pick<Centreline, 'corners' | 'path'>,
  corners: readonly Vec3[],
  figures: readonly SeatFigure[],
): RigidMotion {
  if (figures.length === 0) return rigidFit(tube.corners, corners);
  return fitToFigures(tube.corners, corners, onTube(tube, figures));
}

/** Of a tube that stands by these figures how far each moves it: mm, where it moves most, for each mm that the figure is more. */
export const seatMoves = (
  tube: Pick<Centreline, 'corners' | 'path'>,
  corners: readonly Vec3[],
  figures: readonly SeatFigure[],
): readonly number[] => movesOfFigures(tube.corners, corners, onTube(tube, figures));

const onTube = (tube: Pick<Centreline, 'path'>, figures: readonly SeatFigure[]): readonly PlaceFigure[] =>
  figures.map(({ at, axis, value }) => ({ place: seatPlace(tube, at), axis: AXIS_INDEX[axis], value }));
