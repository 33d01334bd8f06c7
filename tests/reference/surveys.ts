/**
 * Surveys with a known truth: a stripped car of random size, and what tape, level and rule read of it, each reading off by a normal error of the
 * deviation that it claims. Made up; nobody's car.
 */
import type { Measurement } from '../../src/core/job/kinds/measurement.ts';
import { FIRST_SIGMA } from '../../src/core/job/kinds/measurement.ts';
import type { Point } from '../../src/core/job/kinds/point.ts';
import type { Surveyed } from '../../src/core/survey/network.ts';
import { drawFrom, uniformFrom } from './oracles/seeded.ts';
import type { Triple } from './oracles/space.ts';

export interface KnownSurvey extends Surveyed {
  readonly truth: ReadonlyMap<string, Triple>;
}

/** Normal numbers of deviation 1: Box and Muller's formula. */
export function normalFrom(seed: number): () => number {
  const next = uniformFrom(seed);
  return () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
}

/** What it should read at places, worked out anew: not the code's own formula. */
export function readOf(measurement: Measurement, place: (reference: string) => Triple): number {
  const axes = { x: 0, y: 1, z: 2 } as const;
  switch (measurement.kind) {
    case 'coordinate':
      return place(measurement.point)[axes[measurement.axis]];
    case 'width':
      return Math.abs(2 * place(measurement.point)[1]);
    case 'difference':
      return place(measurement.to)[axes[measurement.axis]] - place(measurement.from)[axes[measurement.axis]];
    case 'distance': {
      const [a, b] = [place(measurement.from), place(measurement.to)];
      return Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
    }
    case 'inclination': {
      const [a, b] = [place(measurement.from), place(measurement.to)];
      const rise = b[2] - a[2];
      return (Math.asin(rise / Math.hypot(a[0] - b[0], a[1] - b[1], rise)) * 180) / Math.PI;
    }
  }
}

export const placeOf =
  (truth: ReadonlyMap<string, Triple>) =>
  (reference: string): Triple => {
    const bare = reference.replace("'", '');
    const [x, y, z] = truth.get(bare)!;
    return bare === reference ? [x, y, z] : [x, -y, z];
  };

/** Where things are on a car: pairs left and right. */
const SPOTS: readonly (readonly [string, Triple])[] = [
  ['foot', [-150, 610, 160]],
  ['roof', [-250, 470, 1180]],
  ['sill', [620, 640, 310]],
  ['pillar', [700, 560, 820]],
  ['header', [260, 490, 1150]],
  ['tower', [-1020, 480, 560]],
];

/**
 * `more`: pairs of points beyond the six, for bigger cars. `noise`: share of the readings' deviations that they are off by. Heights by level,
 * offsets and stations of some, widths, and tapes between points near one another; every coordinate is seen to at least twice over.
 */
export function randomSurvey(seed: number, { more = 0, noise = 1, guess = 60 } = {}): KnownSurvey {
  const draw = drawFrom(seed);
  const normal = normalFrom(seed ^ 0x5bd1e995);
  const truth = new Map<string, Triple>();
  const spots = [
    ...SPOTS,
    ...Array.from({ length: more }, (_, i): readonly [string, Triple] => [
      `more${i}`,
      [draw.between(-1600, 1800), draw.between(200, 760), draw.between(60, 1250)],
    ]),
  ];
  for (const [name, [x, y, z]] of spots) {
    const off = (): number => draw.between(-70, 70);
    const [ax, ay, az] = [x + off(), y + off(), z + off()];
    truth.set(`${name}-l`, [ax, ay, az]);
    truth.set(`${name}-r`, [ax + draw.between(-8, 8), -ay + draw.between(-8, 8), az + draw.between(-6, 6)]);
  }
  const ids = [...truth.keys()];
  const place = placeOf(truth);
  const asked: Measurement[] = [];
  const ask = (measurement: object): void => {
    asked.push({ id: `m${asked.length}`, ...measurement, value: 0 } as Measurement);
  };
  for (const id of ids) {
    ask({ kind: 'coordinate', point: id, axis: 'z' });
    if (draw.chance(0.75)) ask({ kind: 'coordinate', point: id, axis: 'y' });
    if (draw.chance(0.7)) ask({ kind: 'coordinate', point: id, axis: 'x' });
  }
  for (const [name] of spots) {
    const [left, right] = [`${name}-l`, `${name}-r`];
    ask({ kind: 'distance', from: left, to: right });
    if (draw.chance(0.5)) ask({ kind: 'difference', from: left, to: right, axis: draw.oneOf(['x', 'z'] as const) });
    if (draw.chance(0.25)) ask({ kind: 'width', point: left });
  }
  for (const from of ids) {
    const near = ids
      .filter((to) => to !== from)
      .toSorted((a, b) => Math.hypot(...apart(place(from), place(a))) - Math.hypot(...apart(place(from), place(b))))
      .slice(0, 7);
    for (let i = 0; i < 3; i++) {
      const to = draw.oneOf(near);
      if (!asked.some((each) => each.kind === 'distance' && new Set([each.from, each.to, from, to]).size === 2)) {
        ask({ kind: 'distance', from, to });
      }
    }
    if (draw.chance(0.15)) ask({ kind: 'inclination', from, to: near[0] });
  }
  const measurements = asked.map((each): Measurement => ({
    ...each,
    value: readOf(each, place) + noise * FIRST_SIGMA[each.kind] * normal(),
  }));
  const points = ids.map((id): Point => ({
    id,
    name: id,
    by: 'survey',
    position: truth.get(id)!.map((part) => part + draw.between(-guess, guess)) as unknown as Triple,
  }));
  return { points, holds: [], measurements, truth };
}

const apart = (a: Triple, b: Triple): Triple => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
