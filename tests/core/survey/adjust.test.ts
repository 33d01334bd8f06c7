import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import { describe, expect, it } from 'vitest';
import { FIRST_SIGMA, sigmaOf, type Measurement } from '../../../src/core/job/kinds/measurement.ts';
import { adjust } from '../../../src/core/survey/adjust.ts';
import type { Surveyed } from '../../../src/core/survey/network.ts';
import { drawn } from '../../draws.ts';
import jstat from 'jstat';
import { drawFrom } from '../../reference/oracles/seeded.ts';
import { placeOf, randomSurvey, readOf } from '../../reference/surveys.ts';
import type { Triple } from '../../reference/oracles/space.ts';

const point = (id: string, position: Triple, by?: 'survey') => ({ id, name: id, position, ...(by && { by }) });
const tape = (id: string, from: string, to: string, value: number, sigma = 1): Measurement => ({
  id,
  kind: 'distance',
  from,
  to,
  value,
  sigma,
});

// The classic exercise of one unknown station by three distances (Wolf and Ghilani's textbooks on adjustment; values from memory,
// checked by the arithmetic of their residuals).
const TEXTBOOK: Surveyed = {
  points: [
    point('A', [865.4, 4527.15, 0]),
    point('B', [2432.55, 2047.25, 0]),
    point('C', [2865.22, 27.15, 0]),
    point('U', [6900, 3700, 0], 'survey'),
  ],
  holds: [{ point: 'U', axis: 'z', value: 0 }],
  measurements: [tape('1', 'A', 'U', 6049), tape('2', 'B', 'U', 4736.83), tape('3', 'C', 'U', 5446.49)],
};

describe('the textbook intersection of three distances', () => {
  const { points, residuals, s0, redundancy, suspects, loose } = adjust(TEXTBOOK)!;

  it('lands where it should', () => {
    expect(points[0]!.position[0]).toBeCloseTo(6861.317, 2);
    expect(points[0]!.position[1]).toBeCloseTo(3727.819, 2);
    expect(points[0]!.position[2]).toBe(0);
  });

  it('leaves what it should: computed less measured', () => {
    expect(residuals.map(({ residual }) => residual.toFixed(4))).toEqual(['-0.0374', '0.0768', '-0.0474']);
    expect(s0).toBeCloseTo(0.0977, 4);
    expect([redundancy, suspects, loose]).toEqual([1, [], []]);
    expect(points[0]!.sigma[2]).toBe(0);
  });
});

const byLibrary = (survey: Surveyed): Map<string, Triple> => {
  const used = survey.measurements.filter(({ excluded }) => !excluded);
  const start = survey.points.flatMap(({ position }) => [...position]);
  const places = (parameters: readonly number[]) => {
    const at = new Map(survey.points.map(({ id }, i) => [id, parameters.slice(3 * i, 3 * i + 3) as unknown as Triple]));
    return placeOf(at);
  };
  const { parameterValues } = levenbergMarquardt(
    { x: used.map((_, i) => i), y: used.map((each) => each.value / sigmaOf(each)) },
    (parameters: number[]) => {
      const at = places(parameters);
      return (i: number) => readOf(used[i]!, at) / sigmaOf(used[i]!);
    },
    {
      initialValues: start,
      centralDifference: true,
      gradientDifference: 1e-3,
      damping: 1e-6,
      maxIterations: 60,
      errorTolerance: 0,
    },
  );
  return new Map(survey.points.map(({ id }, i) => [id, parameterValues.slice(3 * i, 3 * i + 3) as unknown as Triple]));
};

it('agrees with a general least-squares library to 0.01 mm', () => {
  for (let seed = 1; seed <= drawn(4, 40); seed++) {
    const survey = randomSurvey(seed, { guess: 5 });
    const theirs = byLibrary(survey);
    for (const { id, position } of adjust(survey)!.points) {
      position.forEach((part, k) => expect(Math.abs(part - theirs.get(id)![k]!), `${seed} ${id}`).toBeLessThan(0.01));
    }
  }
});

describe('random cars with a known truth', () => {
  const seeds = Array.from({ length: drawn(120, 500) }, (_, i) => i + 1);
  const clean = seeds.map((seed) => {
    const survey = randomSurvey(seed);
    return { seed, survey, adjusted: adjust(survey)! };
  });

  // One point of each car: points of one car err together.
  it('err as the deviations say: chi-square over all, at 1 %', () => {
    let sum = 0;
    for (const { seed, survey, adjusted } of clean) {
      const one = adjusted.points[drawFrom(seed).oneOf(adjusted.points.map((_, i) => i))]!;
      const error = one.position.map((part, k) => part - survey.truth.get(one.id)![k]!) as unknown as Triple;
      sum += quadratic(one.covariance, error);
    }
    const chance = jstat.chisquare.cdf(sum, 3 * seeds.length);
    expect(chance).toBeGreaterThan(0.005);
    expect(chance).toBeLessThan(0.995);
  });

  it('leave over what the deviations of the readings say, at 1 %', () => {
    const sum = clean.reduce((all, { adjusted }) => all + adjusted.s0 ** 2 * adjusted.redundancy, 0);
    const freedom = clean.reduce((all, { adjusted }) => all + adjusted.redundancy, 0);
    const chance = jstat.chisquare.cdf(sum, freedom);
    expect(chance).toBeGreaterThan(0.005);
    expect(chance).toBeLessThan(0.995);
  });

  it('name no good reading in 97 of 100', () => {
    const named = clean.filter(({ adjusted }) => adjusted.suspects.length > 0).length;
    expect(named / seeds.length).toBeLessThan(0.03);
  });

  it('are found from guesses that are metres off, on the right side', () => {
    for (const { seed, survey, adjusted } of clean.slice(0, drawn(15, 150))) {
      const draw = drawFrom(seed);
      const points = survey.points.map((each) => ({
        ...each,
        position: [
          draw.between(-3000, 3000),
          Math.sign(survey.truth.get(each.id)![1]) * draw.between(0, 900),
          draw.between(0, 900),
        ] as const,
      }));
      const far = adjust({ ...survey, points })!;
      expect(far.s0, `${seed}`).toBeLessThan(adjusted.s0 + 0.4);
    }
  });

  // A share of its error that shows of less than a tenth: the others let it be nearly anything.
  const checked = 0.1;

  it.each<
    [string, (measurement: Measurement, draw: ReturnType<typeof drawFrom>, survey: Surveyed) => Measurement | null]
  >([
    [
      '25 mm',
      (each, draw) =>
        each.kind === 'inclination' ? null : { ...each, value: each.value + (draw.chance(0.5) ? 25 : -25) },
    ],
    [
      'two digits changed over',
      (each) => {
        const text = String(Math.round(Math.abs(each.value))).split('');
        const at = text.findIndex((digit, i) => i > 0 && digit !== text[i - 1]);
        if (each.kind === 'inclination' || at < 0) return null;
        const value =
          Math.sign(each.value) *
          Number(
            text
              .with(at, text[at - 1]!)
              .with(at - 1, text[at]!)
              .join(''),
          );
        return Math.abs(value - each.value) < 25 ? null : { ...each, value };
      },
    ],
    [
      'inches for millimetres',
      (each) =>
        each.kind === 'inclination' || Math.abs(each.value) < 40 ? null : { ...each, value: each.value / 25.4 },
    ],
    [
      'another point',
      (each, draw, { points }) => {
        if (each.kind !== 'distance') return null;
        const to = draw.oneOf(points.map(({ id }) => id).filter((id) => id !== each.from && id !== each.to));
        return { ...each, to };
      },
    ],
  ])('name a slip of %s in 95 of 100, and never keep silent of it', (_, slip) => {
    let [named, all] = [0, 0];
    const tried = clean.slice(0, drawn(40, seeds.length));
    for (const { seed, survey, adjusted } of tried) {
      const draw = drawFrom(seed + 7000);
      const open = adjusted.residuals.filter(({ share }) => share > checked).map(({ index }) => index);
      const index = draw.oneOf(open);
      const wrong = slip(survey.measurements[index]!, draw, survey);
      if (wrong === null || isUnseen(survey, wrong)) continue;
      const { suspects, residuals } = adjust({ ...survey, measurements: survey.measurements.with(index, wrong) })!;
      // Measured to another point it is another reading, which the others may check less.
      const { share } = residuals.find((each) => each.index === index)!;
      if (share < checked) continue;
      all++;
      if (suspects.some((each) => each.index === index || each.or.includes(index))) named++;
      expect(suspects.length, `${seed}`).toBeGreaterThan(0);
    }
    expect(all).toBeGreaterThan(tried.length / 3);
    expect(named / all).toBeGreaterThanOrEqual(0.95);
  });
});

/** Whether the wrong reading is right all the same, within a few of its deviations. */
const isUnseen = (survey: ReturnType<typeof randomSurvey>, wrong: Measurement): boolean =>
  Math.abs(readOf(wrong, placeOf(survey.truth)) - wrong.value) < 12 * FIRST_SIGMA[wrong.kind];

/** e' C^-1 e, by Cramer's rule. */
function quadratic(rows: readonly (readonly number[])[], error: Triple): number {
  const det = (m: readonly (readonly number[])[]): number =>
    m[0]![0]! * (m[1]![1]! * m[2]![2]! - m[1]![2]! * m[2]![1]!) -
    m[0]![1]! * (m[1]![0]! * m[2]![2]! - m[1]![2]! * m[2]![0]!) +
    m[0]![2]! * (m[1]![0]! * m[2]![1]! - m[1]![1]! * m[2]![0]!);
  const whole = det(rows);
  const solved = [0, 1, 2].map(
    (k) => det(rows.map((row, i) => row.map((part, j) => (j === k ? error[i]! : part)))) / whole,
  );
  return solved.reduce((sum, part, k) => sum + part * error[k]!, 0);
}

it('the order of the lines makes no difference', () => {
  for (let seed = 1; seed <= drawn(5, 20); seed++) {
    const survey = randomSurvey(seed);
    const wrong = { ...survey.measurements[5]!, value: survey.measurements[5]!.value + 40 };
    const measurements = survey.measurements.with(5, wrong);
    const draw = drawFrom(seed);
    const shuffled = measurements
      .map((each) => ({ each, key: draw.between(0, 1) }))
      .toSorted((a, b) => a.key - b.key)
      .map(({ each }) => each);
    const [one, other] = [adjust({ ...survey, measurements })!, adjust({ ...survey, measurements: shuffled })!];
    one.points.forEach(({ position }, i) =>
      position.forEach((part, k) => expect(other.points[i]!.position[k]).toBeCloseTo(part, 6)),
    );
    expect(other.suspects.map(({ index }) => shuffled[index]!.id)).toEqual(
      one.suspects.map(({ index }) => measurements[index]!.id),
    );
  }
});

describe('what nothing fixes', () => {
  const P = point('P', [500, 600, 300], 'survey');

  it('stays where it was guessed, along that direction alone', () => {
    const { points, loose } = adjust({
      points: [point('O', [0, 0, 0]), P],
      holds: [],
      measurements: [
        { id: '1', kind: 'coordinate', point: 'P', axis: 'z', value: 310 },
        { id: '2', kind: 'coordinate', point: 'P', axis: 'x', value: 480 },
      ],
    })!;
    expect(points[0]!.position).toEqual([480, 600, 310]);
    expect(points[0]!.sigma).toEqual([2, null, 2]);
    expect(loose).toEqual([{ point: 'P', direction: [0, 1, 0] }]);
  });

  it('of one tape is a sphere: the point goes straight out to it', () => {
    const { points, loose } = adjust({
      points: [point('O', [0, 0, 0]), point('P', [300, 400, 0], 'survey')],
      holds: [],
      measurements: [tape('1', 'O', 'P', 1000)],
    })!;
    points[0]!.position.forEach((part, k) => expect(part).toBeCloseTo([600, 800, 0][k]!, 6));
    expect(loose).toHaveLength(2);
    for (const { direction } of loose) {
      expect(direction[0] * 600 + direction[1] * 800).toBeCloseTo(0, 6);
    }
  });

  it('nothing measured at all leaves all three', () => {
    const { points, loose, redundancy, s0 } = adjust({ points: [P], holds: [], measurements: [] })!;
    expect([points[0]!.position, loose.length, redundancy, s0]).toEqual([P.position, 3, 0, 0]);
  });

  it('distances among points alone leave the six motions of the whole', () => {
    const survey = randomSurvey(3);
    const ids = survey.points.map(({ id }) => id);
    const tapes = ids.flatMap((from, i) =>
      ids.slice(i + 1).map((to): Measurement => {
        const asked = tape(`${from} ${to}`, from, to, 0);
        return { ...asked, value: readOf(asked, placeOf(survey.truth)) };
      }),
    );
    const { loose, redundancy } = adjust({ ...survey, measurements: tapes })!;
    // Every point can be moved along and turned with the rest.
    expect(loose).toHaveLength(3 * survey.points.length);
    expect(redundancy).toBe(tapes.length - (3 * survey.points.length - 6));
  });
});

describe('what a reading is of', () => {
  const width = (point: string, value: number): Measurement => ({ id: 'w', kind: 'width', point, value });

  it('a width of an image is that of its point', () => {
    const { points } = adjust({
      points: [point('P', [0, 600, 0], 'survey')],
      holds: [],
      measurements: [width("P'", 1280)],
    })!;
    expect(points[0]!.position[1]).toBeCloseTo(640, 9);
  });

  it('a width is on the side where the point is held, whatever was guessed', () => {
    const { residuals } = adjust({
      points: [point('P', [0, 10, 0], 'survey')],
      holds: [{ point: 'P', axis: 'y', value: -640 }],
      measurements: [width('P', 1280)],
    })!;
    expect(residuals[0]!.residual).toBeCloseTo(0, 9);
  });

  it('a slope between two that are guessed one above the other says how far aside they are', () => {
    const read = (id: string, of: string, axis: 'x' | 'y' | 'z', value: number): Measurement => ({
      id,
      kind: 'coordinate',
      point: of,
      axis,
      value,
    });
    const { points, s0, loose } = adjust({
      points: [point('sill', [0, 640, 300], 'survey'), point('roof', [0, 640, 1300], 'survey')],
      holds: [],
      measurements: [
        read('1', 'sill', 'x', 0),
        read('2', 'sill', 'y', 640),
        read('3', 'sill', 'z', 300),
        read('4', 'roof', 'y', 640),
        read('5', 'roof', 'z', 1300),
        { id: '6', kind: 'inclination', from: 'sill', to: 'roof', value: 75 },
      ],
    })!;
    expect([s0 < 1e-6, loose]).toEqual([true, []]);
    expect(Math.abs(points[1]!.position[0])).toBeCloseTo(1000 / Math.tan((75 * Math.PI) / 180), 4);
  });

  it('what one reading is sure of makes no other unsure', () => {
    const { points, loose, redundancy } = adjust({
      points: [point('P', [0, 0, 0], 'survey')],
      holds: [{ point: 'P', axis: 'z', value: 0 }],
      measurements: [
        { id: '1', kind: 'coordinate', point: 'P', axis: 'x', value: 10, sigma: 0.001 },
        { id: '2', kind: 'coordinate', point: 'P', axis: 'y', value: 50, sigma: 1000 },
      ],
    })!;
    expect([points[0]!.position, loose, redundancy]).toEqual([[10, 50, 0], [], 0]);
    expect(points[0]!.sigma[1]).toBeCloseTo(1000, 6);
  });
});

describe('bad readings', () => {
  const points = [point('A', [0, 0, 0]), point('B', [1000, 0, 0]), point('P', [500, 700, 0], 'survey')];

  it('that contradict one another wholly still give places, and name themselves', () => {
    const { points: placed, suspects } = adjust({
      points,
      holds: [],
      measurements: [
        tape('1', 'A', 'P', 10),
        tape('2', 'B', 'P', 20),
        tape('3', 'A', 'P', 5000),
        { id: '4', kind: 'coordinate', point: 'P', axis: 'z', value: -900 },
        { id: '5', kind: 'width', point: 'P', value: 9000 },
      ],
    })!;
    expect(placed[0]!.position.every(Number.isFinite)).toBe(true);
    expect(suspects.length).toBeGreaterThan(0);
  });

  it('of a point on the centre plane: a width of 0', () => {
    const { points: placed } = adjust({
      points: [point('P', [500, 0, 0], 'survey')],
      holds: [],
      measurements: [{ id: '5', kind: 'width', point: 'P', value: 0 }],
    })!;
    expect(placed[0]!.position).toEqual([500, 0, 0]);
  });

  it('of points in one place', () => {
    const { points: placed } = adjust({
      points: [point('A', [0, 0, 0]), point('P', [0, 0, 0], 'survey'), point('Q', [0, 0, 0], 'survey')],
      holds: [],
      measurements: [tape('1', 'A', 'P', 100), tape('2', 'P', 'Q', 0), tape('3', 'A', 'Q', 100)],
    })!;
    expect(placed.flatMap(({ position }) => position).every(Number.isFinite)).toBe(true);
  });

  it('between typed points are held against where they are', () => {
    const {
      points: placed,
      residuals,
      suspects,
      redundancy,
    } = adjust({
      points: points.slice(0, 2),
      holds: [],
      measurements: [tape('1', 'A', 'B', 1030)],
    })!;
    expect([placed, redundancy]).toEqual([[], 1]);
    expect(residuals[0]).toMatchObject({ residual: -30, standardised: -30, share: 1 });
    expect(suspects).toMatchObject([{ index: 0, fits: 1000, or: [] }]);
  });

  it('that are left out count for nothing', () => {
    const { measurements } = TEXTBOOK;
    const with4 = { ...TEXTBOOK, measurements: [{ ...tape('0', 'A', 'U', 1), excluded: true }, ...measurements] };
    const { residuals, points: placed } = adjust(with4)!;
    expect(residuals.map(({ index }) => index)).toEqual([1, 2, 3]);
    expect(placed).toEqual(adjust(TEXTBOOK)!.points);
  });
});

it('two readings that alone check each other are both named', () => {
  const { suspects } = adjust({
    points: [point('P', [500, 0, 0], 'survey')],
    holds: [],
    measurements: [
      { id: 'b', kind: 'coordinate', point: 'P', axis: 'x', value: 500 },
      { id: 'a', kind: 'coordinate', point: 'P', axis: 'x', value: 600 },
    ],
  })!;
  expect(suspects).toMatchObject([{ index: 1, fits: 500, or: [0] }]);
});
