/** A car that does not stand square to the lines that it is measured from: what is held says where its axes are, and how it stands is found. */
import { describe, expect, it } from 'vitest';
import type { Hold } from '../../../src/core/job/kinds/hold.ts';
import { adjust } from '../../../src/core/survey/adjust.ts';
import type { Measurement } from '../../../src/core/job/kinds/measurement.ts';
import { drawn } from '../../draws.ts';
import { drawFrom } from '../../reference/oracles/seeded.ts';
import type { Triple } from '../../reference/oracles/space.ts';
import { normalFrom, placeOf, randomSurvey, readOf } from '../../reference/surveys.ts';

const DEGREE = Math.PI / 180;

/** Right-hand about one axis: written out, not the code's own. */
const turnedAbout = (axis: 0 | 1 | 2, angle: number, p: Triple): Triple => {
  const [a, b] = axis === 0 ? [1, 2] : axis === 1 ? [2, 0] : [0, 1];
  const turned: [number, number, number] = [...p];
  turned[a] = Math.cos(angle) * p[a]! - Math.sin(angle) * p[b]!;
  turned[b] = Math.sin(angle) * p[a]! + Math.cos(angle) * p[b]!;
  return turned;
};

/** The survey as it is read from lines that the car stands askew to; sills level, towers' and pillars' middles on the centre plane, a foot at station 0. */
function askew(seed: number, noise: number) {
  const straight = randomSurvey(seed, { noise: 0 });
  const draw = drawFrom(seed + 40);
  const turns = [draw.between(-6, 6), draw.between(-3, 3), draw.between(-3, 3)] as const;
  const zero: Triple = [draw.between(-900, 900), draw.between(-1200, 1200), draw.between(0, 200)];
  const onFloor = ([x, y, z]: Triple): Triple => [x + zero[0], y + zero[1], z + zero[2]];
  const floor = new Map(
    [...straight.truth].map(([id, p]) => [
      id,
      onFloor(
        turnedAbout(2, turns[0] * DEGREE, turnedAbout(1, turns[1] * DEGREE, turnedAbout(0, turns[2] * DEGREE, p))),
      ),
    ]),
  );
  const normal = normalFrom(seed);
  const measurements = straight.measurements.map((each) => ({
    ...each,
    // A width is of the car, wherever that stands.
    value: readOf(each, placeOf(each.kind === 'width' ? straight.truth : floor)) + noise * normal(),
  }));
  const z = (id: string): number => straight.truth.get(id)![2];
  const middle = (a: string, b: string): number => (straight.truth.get(a)![1] + straight.truth.get(b)![1]) / 2;
  const holds: readonly Hold[] = [
    { point: 'sill-l', axis: 'z', value: z('sill-l') },
    { point: 'sill-r', axis: 'z', value: z('sill-r') },
    { point: 'tower-l', axis: 'z', value: z('tower-l') },
    { point: 'tower-l', and: 'tower-r', axis: 'y', value: middle('tower-l', 'tower-r') },
    { point: 'pillar-l', and: 'pillar-r', axis: 'y', value: middle('pillar-l', 'pillar-r') },
    { point: 'foot-l', axis: 'x', value: straight.truth.get('foot-l')![0] },
  ];
  // Guessed where they lie over the lines, as what is read there says: all of them on one side, for one.
  const points = straight.points.map((point) => ({ ...point, position: floor.get(point.id)! }));
  return { ...straight, points, measurements, holds, survey: { askew: true }, turns, zero };
}

/** A width says where the centre plane is, which what is held lays. */
const withoutWidths = <S extends ReturnType<typeof askew>>(survey: S): S => ({
  ...survey,
  measurements: survey.measurements.filter(({ kind }) => kind !== 'width'),
});

describe('a car that stands askew', () => {
  it('is found to the last digit by readings without error, and how it stands too', () => {
    for (let seed = 1; seed <= drawn(10, 100); seed++) {
      const survey = askew(seed, 0);
      const { points, stands, loose, s0 } = adjust(survey)!;
      expect([loose, s0 < 1e-6]).toEqual([[], true]);
      for (const { id, position } of points) {
        position.forEach((part, k) => expect(part, `${seed} ${id}`).toBeCloseTo(survey.truth.get(id)![k]!, 5));
      }
      stands!.turns.forEach((turn, k) => expect(turn).toBeCloseTo(survey.turns[k]!, 6));
      stands!.zero.forEach((part, k) => expect(part).toBeCloseTo(survey.zero[k]!, 4));
    }
  });

  it('read as if it stood square would not agree with its tapes', () => {
    const { survey: _, holds: __, ...straight } = askew(5, 0);
    const { points } = adjust({ ...straight, holds: [] })!;
    const off = points.map(({ id, position }) => Math.abs(position[2] - straight.truth.get(id)![2]));
    expect(Math.max(...off)).toBeGreaterThan(20);
  });

  it('other points held lay the same car in other axes: no tape changes', () => {
    const survey = withoutWidths(askew(3, 1));
    const other: readonly Hold[] = [
      { point: 'sill-l', axis: 'z', value: 0 },
      { point: 'header-r', axis: 'z', value: 820 },
      { point: 'tower-r', axis: 'z', value: 240 },
      { point: 'sill-l', axis: 'y', value: 600 },
      { point: 'tower-l', axis: 'y', value: 500 },
      { point: 'sill-l', axis: 'x', value: 0 },
    ];
    const [one, two] = [adjust(survey)!, adjust({ ...survey, holds: other })!];
    expect(two.s0).toBeCloseTo(one.s0, 9);
    const span = (all: typeof one, i: number, k: number): number =>
      Math.hypot(...[0, 1, 2].map((axis) => all.points[i]!.position[axis]! - all.points[k]!.position[axis]!));
    for (let i = 1; i < one.points.length; i++) expect(span(two, 0, i)).toBeCloseTo(span(one, 0, i), 5);
  });

  it('with nothing held is open in all six ways', () => {
    const survey = withoutWidths(askew(2, 1));
    const { redundancy, points } = adjust({ ...survey, holds: [] })!;
    expect(redundancy).toBe(survey.measurements.length - 3 * points.length);
    expect(redundancy).toBe(adjust(survey)!.redundancy);
  });
});

it('a mean stays held where points are found one after another, from guesses that are far off', () => {
  const truth = new Map<string, Triple>([
    ['a', [0, 0, 0]],
    ['b', [1400, 100, 50]],
    ['c', [300, -200, 1100]],
    ['l', [900, 640, 500]],
    ['r', [905, -620, 510]],
  ]);
  const at = placeOf(truth);
  const tapes = ['a', 'b', 'c'].flatMap((from) =>
    ['l', 'r'].map((to): Measurement => {
      const tape: Measurement = { id: from + to, kind: 'distance', from, to, value: 0 };
      return { ...tape, value: readOf(tape, at) };
    }),
  );
  for (const value of [0, 10, 25, 60]) {
    const { points } = adjust({
      points: [...truth].map(([id, position]) =>
        id === 'l' || id === 'r'
          ? { id, name: id, by: 'survey', position: [0, 0, 0] as const }
          : { id, name: id, position },
      ),
      holds: [{ point: 'l', and: 'r', axis: 'y', value }],
      measurements: tapes,
    })!;
    expect((points[0]!.position[1] + points[1]!.position[1]) / 2).toBeCloseTo(value, 9);
  }
});

it('an image may be held, alone and in a mean: its offset is the other way', () => {
  const held = (hold: Hold) =>
    adjust({
      points: [
        { id: 'l', name: 'l', position: [0, 590, 0], by: 'survey' },
        { id: 'm', name: 'm', position: [0, 600, 0], by: 'survey' },
      ],
      holds: [hold],
      measurements: [{ id: '1', kind: 'difference', from: 'l', to: 'm', axis: 'y', value: 20 }],
    })!.points.map(({ position }) => Number(position[1].toFixed(6)));
  expect(held({ point: "l'", axis: 'y', value: -610 })).toEqual([610, 630]);
  // As far left as right: m is 20 more to the left, so l lies 10 right of the plane and m 10 left of it.
  expect(held({ point: 'l', and: 'm', axis: 'y', value: 0 })).toEqual([-10, 10]);
  expect(held({ point: "l'", and: 'm', axis: 'y', value: 10 })).toEqual([585, 605]);
  expect(held({ point: 'l', and: "l'", axis: 'y', value: 0 })).toEqual([585, 605]);
});

it('the mean of two points can be held', () => {
  const { points } = adjust({
    points: [
      { id: 'l', name: 'l', position: [0, 590, 0], by: 'survey' },
      { id: 'r', name: 'r', position: [0, -630, 0], by: 'survey' },
    ],
    holds: [{ point: 'l', and: 'r', axis: 'y', value: 0 }],
    measurements: [
      { id: '1', kind: 'distance', from: 'l', to: 'r', value: 1240 },
      { id: '2', kind: 'difference', from: 'l', to: 'r', axis: 'x', value: 0 },
      { id: '3', kind: 'difference', from: 'l', to: 'r', axis: 'z', value: 0 },
    ],
  })!;
  expect(points.map(({ position }) => position[1].toFixed(6))).toEqual(['620.000000', '-620.000000']);
  expect(points.map(({ sigma }) => sigma[1]!.toFixed(6))).toEqual(['0.750000', '0.750000']);
});
