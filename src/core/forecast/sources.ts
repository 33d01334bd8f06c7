/** What may come out off what was asked for, and by how much: one standard deviation each, mm and radians. */
import { toRadians, type Radians } from '../geometry/angle.ts';
import type { Axis, Vec3 } from '../geometry/vector.ts';
import { FIRST_ACCURACY, GREATEST_DEVIATION } from '../job/kinds/accuracy.ts';
import { bareId, type PointId, type TubeRef } from '../job/reference.ts';
import { referencesOf } from '../job/references.ts';
import type { Job } from '../job/types.ts';
import type { Bar, Frame } from '../solve/types.ts';
import { furtherPulls } from '../springback/pull-advice.ts';
import { adjust } from '../survey/adjust.ts';
import type { Source } from './types.ts';

/** The normal distribution on both sides, 95 % (printed tables). */
const NORMAL_95 = 1.96;

const AXES: readonly Axis[] = ['x', 'y', 'z'];

/** How far a point may be off along x, y and z, mm, one standard deviation each: as its readings leave it, or as it says itself, else as the job has it for all points. The one place that says so. */
export function pointDeviations(job: Job, point: PointId): Vec3 {
  const measured = adjust(job)?.points.find(({ id }) => id === point);
  const own = job.points.find(({ id }) => id === point)?.accuracy;
  const typed = own ?? (job.accuracy ?? FIRST_ACCURACY).point;
  const [x, y, z] = measured?.sigma ?? [typed, typed, typed];
  return [x ?? GREATEST_DEVIATION, y ?? GREATEST_DEVIATION, z ?? GREATEST_DEVIATION];
}

/** How far a bend's angle comes out off: as the pulls of its die and tube scatter, where there are enough to say, else as the job has it. */
export function angleDeviation({ accuracy = FIRST_ACCURACY }: Job, { pullLaw, bends }: Bar, bend: number): Radians {
  const within = pullLaw === null ? null : furtherPulls(pullLaw, bends[bend - 1]!.angle);
  return within === null ? toRadians(accuracy.angle) : within / NORMAL_95;
}

export interface Deviating {
  readonly source: Source;
  readonly deviation: number;
}

/** All that can move anything in the frame: the points that nodes stand by, in the job's order, then bends and cuts in build order. */
export function sourcesOf(frame: Frame): readonly Deviating[] {
  const { job, bars, tubes } = frame;
  const { rotation, mark, cut } = job.accuracy ?? FIRST_ACCURACY;
  const used = new Set(
    job.nodes.flatMap((node) =>
      referencesOf('nodes', node).flatMap(({ list, to }) => (list === 'points' ? [bareId(to)] : [])),
    ),
  );
  /** How these came out is known. */
  const standing = new Set(job.bent.flatMap(({ tube, stands }) => (stands ? [tube] : [])));
  return [
    ...job.points.flatMap(({ id }) => {
      if (!used.has(id)) return [];
      const deviations = pointDeviations(job, id);
      return AXES.map((axis, i): Deviating => ({
        source: { kind: 'point', point: id, axis },
        deviation: deviations[i]!,
      }));
    }),
    ...[...bars].flatMap(([bar, each]) =>
      (standing.has(bar) ? [] : each.bends).flatMap((_, i): readonly Deviating[] => {
        const of = { kind: 'bend', bar, bend: i + 1 } as const;
        return [
          { source: { ...of, slip: 'angle' }, deviation: angleDeviation(job, each, i + 1) },
          // That of the first bend only turns the tube as a whole.
          ...(i === 0 ? [] : [{ source: { ...of, slip: 'rotation' } as const, deviation: toRadians(rotation) }]),
          { source: { ...of, slip: 'mark' }, deviation: mark },
        ];
      }),
    ),
    ...tubes.flatMap(({ id }) =>
      (['A', 'B'] as const).map((end): Deviating => ({ source: { kind: 'cut', tube: id, end }, deviation: cut })),
    ),
  ].filter(({ deviation }) => deviation > 0);
}

/** What a bend came out off by, mm and radians. */
export interface BendError {
  readonly angle: Radians;
  readonly rotation: Radians;
  /** mm too far from end A. */
  readonly mark: number;
}

/** What one cage came out off by; what is not named came out as asked for. */
export interface Errors {
  /** mm from where the point was thought to where it is. */
  readonly points: ReadonlyMap<PointId, Vec3>;
  /** By bar and the number of its bend, 1 = first from end A. */
  readonly bends: ReadonlyMap<TubeRef, ReadonlyMap<number, BendError>>;
  /** mm that end A and end B were sawn short, by tube. */
  readonly cuts: ReadonlyMap<TubeRef, readonly [number, number]>;
}

const ALL_WELL: BendError = { angle: 0, rotation: 0, mark: 0 };

/** The errors that come of so much of each source, mm and radians, in the order of the sources. */
export function errorsOf(sources: readonly Deviating[], amounts: readonly number[]): Errors {
  const points = new Map<PointId, Vec3>();
  const bends = new Map<TubeRef, Map<number, BendError>>();
  const cuts = new Map<TubeRef, readonly [number, number]>();
  sources.forEach(({ source }, i) => {
    const amount = amounts[i]!;
    if (amount === 0) return;
    if (source.kind === 'point') {
      const before = points.get(source.point) ?? [0, 0, 0];
      points.set(source.point, AXES.map((axis, k) => before[k]! + (axis === source.axis ? amount : 0)) as never);
    } else if (source.kind === 'bend') {
      const ofBar = bends.get(source.bar) ?? new Map<number, BendError>();
      ofBar.set(source.bend, { ...(ofBar.get(source.bend) ?? ALL_WELL), [source.slip]: amount });
      bends.set(source.bar, ofBar);
    } else {
      const [a, b] = cuts.get(source.tube) ?? [0, 0];
      cuts.set(source.tube, source.end === 'A' ? [amount, b] : [a, amount]);
    }
  });
  return { points, bends, cuts };
}
