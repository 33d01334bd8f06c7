import { describe, expect, it } from 'vitest';
import { holdCoordinate, letCoordinateGo } from '../../../src/core/edit/holds.ts';
import {
  addReading,
  guessAt,
  leaveOut,
  measurePoint,
  pointCalled,
  removeReadings,
  setReadingPoint,
  setReadingSigma,
  setReadingValue,
  takeMisread,
  typePlace,
  type SaidReading,
} from '../../../src/core/edit/measurements.ts';
import { movePoint, removePoint } from '../../../src/core/edit/points.ts';
import { movePoints, removeSeveral } from '../../../src/core/edit/several.ts';
import { emptyJob } from '../../../src/core/job/empty-job.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { adjust } from '../../../src/core/survey/adjust.ts';
import { placeOfPoint } from '../../../src/core/survey/measured-points.ts';
import { sidesOpen } from '../../../src/core/survey/sides-open.ts';
import type { Way } from '../../../src/core/survey/ways.ts';
import { deepFreeze } from '../../laws/jobs.ts';

const blank = deepFreeze(emptyJob('mm'));

/** What a person types, line by line: way, from, value, to. */
const typed = (job: Job, ...lines: readonly (readonly [Way, string, number, string?])[]): Job =>
  lines.reduce<Job>((done, [way, from, value, to]) => addReading(done, said(way, from, value, to)), job);

const said = (way: Way, from: string, value: number, to?: string): SaidReading => ({
  way,
  from: { name: from },
  ...(to !== undefined && { to: { name: to } }),
  value,
});

const guesses = (job: Job) => Object.fromEntries(job.points.map(({ name, position }) => [name, position]));
const measurementsOf = (job: Job) =>
  job.measurements.map((reading) => {
    const { id: _, ...rest } = reading;
    return rest;
  });

const base = deepFreeze(
  typed(
    blank,
    ...(
      [
        ['Sill, left', 700, 650, 140],
        ['Sill, right', 702, -648, 142],
        ['Foot, left', -310, 590, 160],
      ] as const
    ).flatMap(([name, x, y, z]) => [
      ['station', name, x] as const,
      ['offset', name, y] as const,
      ['height', name, z] as const,
    ]),
  ),
);

describe('a reading of a point that is not there yet', () => {
  it('makes the point once, measured, with what was read of it as its guess', () => {
    expect(base.points.map(({ name, by }) => [name, by])).toEqual([
      ['Sill, left', 'survey'],
      ['Sill, right', 'survey'],
      ['Foot, left', 'survey'],
    ]);
    expect(guesses(base)['Sill, right']).toEqual([702, -648, 142]);
    expect(placeOfPoint(base, base.points[0]!.id)).toEqual([700, 650, 140]);
    expect(parseJob(serialiseJob(base))).toEqual({ ok: true, job: base });
  });

  it('guesses the side by the name, and the place near the point it was measured from', () => {
    const job = typed(base, ['distance', 'Sill, left', 900, 'Roof, right'], ['level', 'Sill, left', 500, 'Roof, left']);
    const [x, y, z] = guesses(job)['Roof, right']!;
    expect(y).toBeLessThan(0);
    expect(Math.hypot(x - 700, y - 650, z - 140)).toBeCloseTo(900, 9);
    expect(guesses(job)['Roof, left']).toEqual([700, 650, 640]);
  });

  it('may be the one measured from: it is then below what it is that much lower than', () => {
    const job = typed(base, ['level', 'Floor', 500, 'Sill, left']);
    expect(guesses(job)['Floor']).toEqual([700, 650, -360]);
  });

  it('two new ones at once are apart, and the width of one is on its side', () => {
    const job = typed(blank, ['distance', 'A, left', 400, 'B, left'], ['width', 'C, right', 1200]);
    const [a, b] = [guesses(job)['A, left']!, guesses(job)['B, left']!];
    expect(Math.hypot(...a.map((part, k) => part - b[k]!))).toBeCloseTo(400, 9);
    expect(guesses(job)['C, right']![1]).toBe(-600);
    expect(adjust(job)!.residuals[1]!.residual).toBeCloseTo(0, 9);
  });

  it('a plumb line is two differences of nothing, in one go', () => {
    const job = typed(base, ['plumb', 'Foot, left', 0, 'Roof, left']);
    const [foot, roof] = [base.points[2]!.id, job.points[3]!.id];
    expect(measurementsOf(job).slice(9)).toEqual([
      { kind: 'difference', from: foot, to: roof, axis: 'x', value: 0 },
      { kind: 'difference', from: foot, to: roof, axis: 'y', value: 0 },
    ]);
    expect(adjust(typed(job, ['height', 'Roof, left', 1100]))!.loose).toEqual([]);
  });
});

it('a later height sets the guess as long as nothing fixed it, and never where the point is typed', () => {
  const job = typed(base, ['distance', 'Sill, left', 900, 'Roof, left']);
  const there = typed(job, ['offset', 'Roof, left', 480]);
  expect(guesses(there)['Roof, left']![1]).toBe(480);
  expect(guesses(typed(there, ['offset', 'Roof, left', 300]))['Roof, left']![1]).toBe(480);
  const [first] = base.points;
  const still = typePlace(base, first!.id);
  expect(typed(still, ['height', 'Sill, left', 999]).points[0]).toBe(still.points[0]);
});

it('what it was read with, and how sure, goes along; names are found whatever their case, with a prime the image', () => {
  const job = addReading(base, {
    way: 'distance',
    from: { name: 'sill, LEFT' },
    to: { name: "Foot, left'" },
    value: 1600,
    instrument: 'Long tape',
    sigma: 2.5,
  });
  const [a, , c] = base.points;
  expect(measurementsOf(job).at(-1)).toEqual({
    kind: 'distance',
    from: a!.id,
    to: `${c!.id}'`,
    value: 1600,
    instrument: 'Long tape',
    sigma: 2.5,
  });
  expect(pointCalled(job, 'Foot, left, mirrored')).toBe(`${c!.id}'`);
  expect(pointCalled(job, 'Foot')).toBeNull();
});

describe('a reading that is there', () => {
  const { id } = base.measurements[2]!;
  const [sill, right] = base.points;

  it('is changed, left out, taken back, deleted', () => {
    expect(placeOfPoint(setReadingValue(base, id, 150), sill!.id)).toEqual([700, 650, 150]);
    expect(setReadingSigma(base, id, 4).measurements[2]).toMatchObject({ sigma: 4, value: 140 });
    const out = leaveOut(base, id, true);
    expect(adjust(out)!.loose.map(({ point }) => point)).toEqual([sill!.id]);
    expect(leaveOut(out, id, false)).toEqual(base);
    expect(removeReadings(base, [id]).measurements).toHaveLength(8);
  });

  it('is moved to another point, and takes what was meant', () => {
    expect(setReadingPoint(base, id, 'point', right!.id).measurements[2]).toMatchObject({ point: right!.id });
    expect(setReadingPoint(base, id, 'point', sill!.id)).toBe(base);
    expect(takeMisread(base, id, { how: 'digit', reads: 149, unit: 'mm' }).measurements[2]).toMatchObject({
      value: 149,
    });
    expect(takeMisread(base, id, { how: 'point', key: 'point', point: right!.id }).measurements[2]).toMatchObject({
      point: right!.id,
      value: 140,
    });
  });
});

describe('a measured point', () => {
  const [sill] = base.points;

  it('is not moved by typing or dragging', () => {
    expect(movePoint(base, sill!.id, [0, 0, 0])).toBe(base);
    expect(movePoints(base, new Set(base.points.map(({ id }) => id)), [1, 1, 1])).toBe(base);
  });

  it('becomes a typed one where it was measured, without its holds; and a typed one a measured', () => {
    const off = guessAt(holdCoordinate(base, sill!.id, 'z', 133), sill!.id, [1, 2, 3]);
    expect(placeOfPoint(off, sill!.id)).toEqual([700, 650, 133]);
    const still = typePlace(off, sill!.id);
    expect(still.points[0]).toEqual({ id: sill!.id, name: 'Sill, left', position: [700, 650, 133] });
    expect(still.holds).toEqual([]);
    expect(still.measurements).toBe(base.measurements);
    expect(measurePoint(still, sill!.id).points[0]).toEqual({ ...still.points[0], by: 'survey' });
  });

  it('has each coordinate held once, and lets it go', () => {
    const held = holdCoordinate(holdCoordinate(base, sill!.id, 'x', 1), sill!.id, 'x', 2);
    expect(held.holds).toEqual([{ point: sill!.id, axis: 'x', value: 2 }]);
    expect(letCoordinateGo(held, sill!.id, 'x').holds).toEqual([]);
    expect(letCoordinateGo(base, sill!.id, 'x')).toBe(base);
    const [left, right] = base.points;
    const middle: Job = { ...base, holds: [{ point: left!.id, and: right!.id, axis: 'y', value: 0 }] };
    expect(holdCoordinate(middle, right!.id, 'y', -650).holds).toEqual([{ point: right!.id, axis: 'y', value: -650 }]);
    expect((removePoint(middle, right!.id) as Job).holds).toEqual([]);
  });

  it('takes what was measured at it, and what is held of it, along when it goes', () => {
    const held = holdCoordinate(base, sill!.id, 'x', 1);
    const gone = removePoint(held, sill!.id) as Job;
    expect([gone.points.length, gone.measurements.length, gone.holds.length]).toEqual([2, 6, 0]);
    const all = removeSeveral(
      held,
      'points',
      held.points.map(({ id }) => id),
    ) as Job;
    expect([all.points, all.measurements, all.holds]).toEqual([[], [], []]);
  });
});

it('which of two places is the right one is asked until it was said, whichever it is', () => {
  const floor = typed(
    blank,
    ...(['A', 'B', 'C'] as const).flatMap((name, i) => [
      ['station', name, [0, 1000, 300][i]!] as const,
      ['offset', name, [0, 100, 900][i]!] as const,
      ['height', name, 0] as const,
    ]),
  );
  // 300, 400, 500 and from the two others, worked out by hand.
  const job = typed(
    floor,
    ['distance', 'A', Math.hypot(300, 400, 500), 'P'],
    ['distance', 'B', Math.hypot(700, 300, 500), 'P'],
    ['distance', 'C', Math.hypot(0, 500, 500), 'P'],
  );
  const open = sidesOpen(job, adjust(job)!);
  const p = job.points[3]!.id;
  expect(open.map(({ point }) => point)).toEqual([p]);
  for (const z of [500, -500]) {
    const told = guessAt(job, p, [300, 400, z]);
    expect(placeOfPoint(told, p)!.map((part) => Math.round(part * 1e6) / 1e6)).toEqual([300, 400, z]);
    expect(sidesOpen(told, adjust(told)!)).toEqual([]);
  }
});
