/** Edits of what was measured at the car. A reading that names a point which is not there makes it: its place then comes of the measurements. */
import type { Measurement } from '../job/kinds/measurement.ts';
import { bareId, isPrimed, primed, type PointId, type PointRef } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import { adjust } from '../survey/adjust.ts';
import { placeOfPoint } from '../survey/measured-points.ts';
import type { Misread } from '../survey/misread.ts';
import { isMeasured } from '../survey/network.ts';
import { namedAlike } from '../survey/point-pairs.ts';
import { isAtOne, readingsOf, type Way } from '../survey/ways.ts';
import { firstGuess, withRead, type ReadAt } from './first-guess.ts';
import { withoutHolds } from './holds.ts';
import { nextId } from './ids.ts';
import { appendRecord, changeRecord, findRecord, takeOut, withRecords } from './records.ts';

/** A point by its reference, or by a name: of the point that is called so, or of a new one. */
export type Said = { readonly ref: PointRef } | { readonly name: string };

export interface ReadWith {
  /** What it was read with. */
  readonly instrument?: string | undefined;
  /** One standard deviation, mm; degrees of a slope. */
  readonly sigma?: number | undefined;
}

export interface SaidReading extends ReadWith {
  readonly way: Way;
  readonly from: Said;
  /** Counts for nothing where one point is enough. */
  readonly to?: Said | undefined;
  /** mm, degrees of a slope; counts for nothing at a plumb line. */
  readonly value: number;
}

/** The point that is called so, letter case aside; with "mirrored" or a prime after the name its mirror image; null where none is. */
export function pointCalled(job: Pick<Job, 'points'>, name: string): PointRef | null {
  const called = name.trim().toLowerCase();
  const [, bare] = /^(.+?)(?:, mirrored|['′])$/u.exec(called) ?? [];
  const find = (wanted: string): PointId | undefined =>
    job.points.find((point) => point.name.toLowerCase() === wanted)?.id;
  const itself = find(called);
  if (itself !== undefined || bare === undefined) return itself ?? null;
  const imaged = find(bare);
  return imaged === undefined ? null : primed(imaged);
}

/** The job with the reading, at the end of the list, and with the points that it names for the first time. */
export function addReading(job: Job, { way, from, to, value, instrument, sigma }: SaidReading): Job {
  const [withFrom, first] = pointFor(job, from, () => ({ way, value, other: placeSaid(job, to), isFrom: true }));
  const [named, second] =
    to === undefined || isAtOne(way)
      ? [withFrom, first]
      : pointFor(withFrom, to, () => ({ way, value, other: placeOfPoint(withFrom, first), isFrom: false }));
  const read = { ...(sigma !== undefined && { sigma }), ...(instrument !== undefined && { instrument }) };
  const across = way === 'width' ? onOtherSide(named, first) : null;
  const readings: ReturnType<typeof readingsOf> =
    across === null ? readingsOf(way, first, second, value) : [{ kind: 'distance', from: first, to: across, value }];
  return readings.reduce<Job>(
    (done, reading) =>
      appendRecord(done, 'measurements', {
        id: nextId(done, 'measurements'),
        ...reading,
        ...read,
      }),
    guessedBy(named, way, first, value),
  );
}

/** A width is read from a point to the same place on the other side: to its own point there, where the car has one by name. */
function onOtherSide({ points }: Job, ref: PointRef): PointRef | null {
  const own = points.find(({ id }) => id === bareId(ref));
  const other = own && points.find((each) => namedAlike(own, each));
  if (other === undefined) return null;
  return isPrimed(ref) ? primed(other.id) : other.id;
}

const placeSaid = (job: Job, said: Said | undefined): ReadAt['other'] => {
  const ref = said === undefined ? null : refOf(job, said);
  return ref === null ? null : placeOfPoint(job, ref);
};

const refOf = (job: Job, said: Said): PointRef | null => ('ref' in said ? said.ref : pointCalled(job, said.name));

/** The point, and the job that has it. */
function pointFor(job: Job, said: Said, read: () => ReadAt): readonly [Job, PointRef] {
  const there = refOf(job, said);
  if (there !== null) return [job, there];
  const { name } = said as { readonly name: string };
  const id = nextId(job, 'points');
  return [appendRecord(job, 'points', { id, name: name.trim(), position: firstGuess(name, read()), by: 'survey' }), id];
}

/** What is read along an axis is the guess along it too, as long as nothing else has fixed that. */
function guessedBy(job: Job, way: Way, ref: PointRef, value: number): Job {
  if (!isAtOne(way) || isPrimed(ref)) return job;
  const at = { station: 0, offset: 1, width: 1, height: 2 }[way];
  const own = adjust(job)?.points.find(({ id }) => id === ref);
  if (own === undefined || own.sigma[at] !== null) return job;
  return changeRecord(job, 'points', ref, (point) => ({
    ...point,
    position: withRead(point.position, way, value, point.position[1] < 0 ? -1 : 1),
  }));
}

const changeReading = (job: Job, id: string, fields: Partial<Measurement>): Job =>
  changeRecord(job, 'measurements', id, (reading) => ({ ...reading, ...fields }) as Measurement);

/** What it was read with, and how surely that reads; the same job where nobody says. */
export const setReadWith = (job: Job, id: string, { instrument, sigma }: ReadWith): Job =>
  changeReading(job, id, { ...(instrument !== undefined && { instrument }), ...(sigma !== undefined && { sigma }) });

/** mm, or degrees of a slope. */
export const setReadingValue = (job: Job, id: string, value: number): Job => changeReading(job, id, { value });

/** One standard deviation of what was read, in its unit. */
export const setReadingSigma = (job: Job, id: string, sigma: number): Job => changeReading(job, id, { sigma });

/** Measured at another point of the job, or its mirror image, than the one that stands there. */
export const setReadingPoint = (job: Job, id: string, key: 'point' | 'from' | 'to', ref: PointRef): Job =>
  changeReading(job, id, { [key]: ref });

/** What the reading was meant to be. */
export const takeMisread = (job: Job, id: string, misread: Misread): Job =>
  'point' in misread ? setReadingPoint(job, id, misread.key, misread.point) : setReadingValue(job, id, misread.reads);

/** It counts for nothing but stays; with false it counts again. */
export const leaveOut = (job: Job, id: string, isOut: boolean): Job =>
  changeRecord(job, 'measurements', id, (reading) => {
    const { excluded: _, ...rest } = reading;
    return isOut ? { ...reading, excluded: true } : rest;
  });

export const removeReadings = (job: Job, ids: readonly string[]): Job => takeOut(job, 'measurements', new Set(ids));

/** Its place comes of the measurements from now on; where it stands is the first guess. */
export const measurePoint = (job: Job, id: PointId): Job =>
  changeRecord(job, 'points', id, (point) => {
    const { guessed: _, from: __, accuracy: ___, ...rest } = point;
    return { ...rest, by: 'survey' };
  });

/** Where it was measured to be is its place as typed; readings of it stay and check it. */
export function typePlace(job: Job, id: PointId): Job {
  const position = placeOfPoint(job, id);
  if (position === null) return job;
  const typed = changeRecord(job, 'points', id, (point) => {
    if (!isMeasured(point)) return point;
    const { by: _, ...rest } = point;
    return { ...rest, position };
  });
  return typed === job ? job : withoutHolds(typed, new Set([id]));
}

/** Which of two places that the readings allow is the right one: the adjustment begins there. */
export const guessAt = (job: Job, id: PointId, position: Job['points'][number]['position']): Job =>
  withRecords(
    job,
    'points',
    job.points.map((point) => (point.id === id && isMeasured(point) ? { ...point, position } : point)),
  );

/** With the other sign: left for right, up for down. */
export const turnRound = (job: Job, ids: ReadonlySet<string>): Job =>
  [...ids].reduce((done, id) => {
    const reading = findRecord(done, 'measurements', id);
    return reading === undefined ? done : changeReading(done, id, { value: 0 - reading.value });
  }, job);
