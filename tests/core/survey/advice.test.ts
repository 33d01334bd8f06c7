/** What is said beside the places: what a reading may have been, where else a point may lie, what would tell most about it. */
import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../../src/core/geometry/vector.ts';
import type { Measurement } from '../../../src/core/job/kinds/measurement.ts';
import { adjust } from '../../../src/core/survey/adjust.ts';
import { elsewhere } from '../../../src/core/survey/mirror.ts';
import { misreads } from '../../../src/core/survey/misread.ts';
import type { Surveyed } from '../../../src/core/survey/network.ts';
import { nextMeasurement } from '../../../src/core/survey/next-measurement.ts';
import { drawn } from '../../draws.ts';
import { drawFrom } from '../../reference/oracles/seeded.ts';
import { placeOf, randomSurvey, readOf } from '../../reference/surveys.ts';

const survey = randomSurvey(11, { noise: 0.5 });
const place = placeOf(survey.truth);

/** The survey with that reading in place of what is there, and the first that is said of it. */
function said(index: number, change: Partial<Measurement>, unit: 'in' | 'mm' = 'mm') {
  const wrong = { ...survey.measurements[index]!, ...change } as Measurement;
  const measurements = survey.measurements.with(index, wrong);
  const adjusted = adjust({ ...survey, measurements })!;
  const suspect = adjusted.suspects.find((each) => each.index === index)!;
  return misreads({ ...survey, measurements }, adjusted, suspect, unit);
}

const clean = adjust(survey)!;
const checked = (kind: Measurement['kind']): readonly number[] =>
  clean.residuals.flatMap(({ index, share }) =>
    share > 0.3 && survey.measurements[index]!.kind === kind ? [index] : [],
  );

describe('what a reading may have been', () => {
  const right = (index: number): number => Math.round(readOf(survey.measurements[index]!, place));

  it('two digits changed over', () => {
    const index = checked('distance').find((each) => Math.abs(swap(right(each)) - right(each)) > 100)!;
    expect(said(index, { value: swap(right(index)) })[0]).toMatchObject({
      how: 'swapped',
      reads: right(index),
      unit: 'mm',
    });
  });

  it('two digits of whole inches changed over', () => {
    const index = checked('distance').find((each) => Math.abs(inches(right(each)) - right(each)) > 100)!;
    expect(said(index, { value: inches(right(index)) }, 'in').map(({ how }) => how)).toContain('swapped');
  });

  it.each([
    ['inches typed as millimetres', 1 / 25.4, 'unit'],
    ['a tape held at 100 mm', 0, 'mark'],
  ])('%s', (_, times, how) => {
    const [index] = checked('distance') as [number];
    const value = times === 0 ? right(index) + 100 : right(index) * times;
    expect(said(index, { value })[0]).toMatchObject({ how });
  });

  it('the other sign', () => {
    const index = checked('coordinate').find((each) => Math.abs(right(each)) > 100)!;
    expect(said(index, { value: -right(index) }).map(({ how }) => how)).toContain('sign');
  });

  it('from plumb', () => {
    const [index] = checked('inclination') as [number];
    const value = 90 - Math.abs(readOf(survey.measurements[index]!, place));
    const found = said(index, { value: Math.sign(readOf(survey.measurements[index]!, place)) * value });
    expect(found.map(({ how }) => how)).toContain('plumb');
  });

  // A car is nearly its own mirror image: the same tape on the other side reads nearly the same, and is named beside it.
  it('to another point, of most that are far enough off to be seen', () => {
    let [named, all] = [0, 0];
    for (const index of checked('distance')) {
      const { from, to } = survey.measurements[index] as { from: string; to: string };
      const value = readOf({ ...survey.measurements[index]!, to: other(to) } as Measurement, place);
      if (from === other(to) || Math.abs(value - right(index)) < 60) continue;
      all++;
      if (said(index, { value }).some((one) => one.how === 'point' && one.key === 'to' && one.point === other(to)))
        named++;
    }
    expect(all).toBeGreaterThan(8);
    expect(named / all).toBeGreaterThan(0.6);
  });

  it('nothing that explains it', () => {
    const index = checked('distance').find((each) => right(each) > 300)!;
    expect(said(index, { value: right(index) + 4037.3 }).map(({ how }) => how)).not.toContain('swapped');
  });

  const swap = (value: number): number => {
    const text = String(value);
    return Number(text[1]! + text[0]! + text.slice(2));
  };
  const inches = (value: number): number => {
    const whole = String(Math.floor(value / 25.4));
    const rest = value / 25.4 - Math.floor(value / 25.4);
    return (Number(whole[1]! + whole[0]! + whole.slice(2)) + rest) * 25.4;
  };
  const other = (to: string): string => (to.endsWith('l') ? to.replace(/l$/u, 'r') : to.replace(/r$/u, 'l'));
});

describe('where else a point may lie', () => {
  it('taped from three places alone it may be on either side of their plane', () => {
    const spanned = (position: readonly [number, number, number]): Surveyed => ({
      points: [
        { id: 'A', name: 'A', position: [0, 0, 0] },
        { id: 'B', name: 'B', position: [900, 0, 0] },
        { id: 'C', name: 'C', position: [0, 800, 0] },
        { id: 'P', name: 'P', position, by: 'survey' },
      ],
      holds: [],
      measurements: (['A', 'B', 'C'] as const).map((from, i) => ({
        id: from,
        kind: 'distance',
        from,
        to: 'P',
        // From (200, 300, 400), by Pythagoras.
        value: [Math.sqrt(290000), Math.sqrt(740000), Math.sqrt(450000)][i]!,
      })),
    });
    for (const [guess, z] of [
      [[100, 100, 50], 400],
      [[100, 100, -50], -400],
    ] as const) {
      const all = spanned(guess);
      const adjusted = adjust(all)!;
      adjusted.points[0]!.position.forEach((part, k) => expect(part).toBeCloseTo([200, 300, z][k]!, 5));
      const [found] = elsewhere(all, adjusted);
      found!.there.forEach((part, k) => expect(part).toBeCloseTo([200, 300, -z][k]!, 5));
    }
  });

  it('nowhere, of points whose heights, offsets and stations are read', () => {
    expect(elsewhere(survey, clean)).toEqual([]);
  });
});

describe('the measurement that would tell most', () => {
  it('of what nothing fixes is one that fixes it', () => {
    for (let seed = 1; seed <= drawn(10, 60); seed++) {
      const whole = randomSurvey(seed);
      const id = drawFrom(seed).oneOf(whole.points).id;
      const left = whole.measurements.filter((each) => !('point' in each) || each.point !== id);
      const sparse = {
        ...whole,
        measurements: left.filter(
          (each) =>
            !['distance', 'inclination'].includes(each.kind) ||
            !('from' in each) ||
            (each.from !== id && each.to !== id),
        ),
      };
      const adjusted = adjust(sparse)!;
      const next = nextMeasurement(sparse, adjusted, id)!;
      const open = adjusted.loose.filter(({ point }) => point === id).length;
      expect(open).toBeGreaterThan(0);
      const taken: Measurement =
        next.kind === 'coordinate'
          ? { id: 'next', kind: 'coordinate', point: id, axis: next.axis, value: 0 }
          : { id: 'next', kind: 'distance', from: id, to: next.to, value: 0 };
      const value = readOf(taken, placeOf(whole.truth));
      const more = { ...sparse, measurements: [...sparse.measurements, { ...taken, value }] };
      expect(adjust(more)!.loose.filter(({ point }) => point === id).length).toBeLessThan(open);
    }
  });

  it('does not ask for what hardly tells: a point that swings round a line nearly along the car is not fixed by its station', () => {
    const typed = (id: string, position: Vec3) => ({ id, name: id, position });
    const taped = (to: string, value: number): Measurement => ({ id: to, kind: 'distance', from: 'p', to, value });
    // Both ends of the line are on the floor, 1000 apart and 100 aside; the point is 500 up, and swings to either side.
    const swinging: Surveyed = {
      points: [typed('a', [0, 0, 0]), typed('b', [1000, 100, 0]), { ...typed('p', [300, 30, 500]), by: 'survey' }],
      holds: [],
      measurements: [taped('a', Math.hypot(300, 30, 500)), taped('b', Math.hypot(700, 70, 500))],
    };
    expect(nextMeasurement(swinging, adjust(swinging)!, 'p')).toEqual({ kind: 'coordinate', point: 'p', axis: 'y' });
  });

  it('of a point that is typed, none', () => {
    const typed = { ...survey, points: survey.points.map(({ id, name, position }) => ({ id, name, position })) };
    expect(nextMeasurement(typed, adjust(typed)!, typed.points[0]!.id)).toBeNull();
  });
});
