import { describe, expect, it } from 'vitest';
import { derive } from '../../../src/core/derive.ts';
import type { BentBend, BendStep } from '../../../src/core/job/kinds/bent.ts';
import { tapeList } from '../../../src/core/marks/tape.ts';
import { asBent } from '../../../src/core/run/as-bent.ts';
import { tapedAs } from '../../../src/core/run/check-dimensions.ts';
import { fitTape, onSide, type TapeFigure, type TapeFit } from '../../../src/core/run/fit-tape.ts';
import { fittedBends, sawnZero, takenOver } from '../../../src/core/run/fitted-bends.ts';
import { onBlank } from '../../../src/core/solve/as-built.ts';
import { fitInWords } from '../../../src/core/words/tape-fit.ts';
import type { SolvedTube } from '../../../src/core/solve/types.ts';
import type { Triple } from '../../laws/frames.ts';
import { jobOf } from '../frame.ts';
import { drawn as howMany } from '../../draws.ts';
import { uniformFrom } from '../../reference/oracles/seeded.ts';

const SECTION = { id: 's', outerDiameter: 40, wall: 3 };
const DIE = { id: 'd', outerDiameter: 40, centrelineRadius: 150 };

function bar(path: readonly Triple[], left: readonly [number, number] = [4, 0]): SolvedTube {
  const nodes = Object.fromEntries(path.map((each, i) => [`n${i}`, each]));
  const ends = left.map((allowance) => ({ fit: 'square', allowance }));
  const members = [{ id: 'bar', section: 's', die: 'd', path: Object.keys(nodes), ends }];
  const derivation = derive(jobOf({ nodes, sections: [SECTION], dies: [DIE], members }));
  if (!derivation.ok) throw new Error('no tube');
  return derivation.value.byId.get('bar')!;
}

/** Where each corner leans off the plane by `lean`: 0 is flat. */
const HOOPS = (wide: number, high: number, lean: number): Record<string, readonly Triple[]> => ({
  elbow: [
    [0, 0, 0],
    [0, 0, high],
    [wide, 0, high],
  ],
  hoop: [
    [0, 0, 0],
    [lean, 0, high],
    [lean, wide, high],
    [0, wide, 0],
  ],
  twisted: [
    [0, 0, 0],
    [0, 0, high],
    [lean, wide, high],
    [lean + 200, wide, 0],
  ],
  main: [
    [0, 0, 0],
    [0, 0, 0.6 * high],
    [lean, 0.15 * wide, high],
    [lean, 0.85 * wide, high],
    [0, wide, 0.6 * high],
    [0, wide, 0],
  ],
});

const order = (tube: SolvedTube, front: 'A' | 'B'): readonly BendStep[] =>
  tube.bends.map((_, i) => ({ bend: i + 1, front }));

const DEVIATIONS = { angle: 1.5, rotation: 2, middle: 3 } as const;

/** Nelder and Mead's simplex, begun at the plan and at each unknown moved either way; the least that it finds. */
function simplex(sizes: readonly number[], cost: (moves: readonly number[]) => number): number {
  const from = (start: readonly number[]): number => {
    let all = [start, ...sizes.map((size, i) => start.with(i, start[i]! + size / 2))].map((at) => ({
      at,
      cost: cost(at),
    }));
    const n = sizes.length;
    for (let step = 0; step < 150 * n; step++) {
      all = all.toSorted((a, b) => a.cost - b.cost);
      const worst = all[n]!;
      const mean = sizes.map((_, i) => all.slice(0, n).reduce((sum, { at }) => sum + at[i]! / n, 0));
      const towards = (by: number) => {
        const at = mean.map((each, i) => each + by * (worst.at[i]! - each));
        return { at, cost: cost(at) };
      };
      const over = towards(-1);
      if (over.cost < all[0]!.cost) {
        const farther = towards(-2);
        all[n] = farther.cost < over.cost ? farther : over;
      } else if (over.cost < all[n - 1]!.cost) all[n] = over;
      else {
        const back = towards(over.cost < worst.cost ? -0.5 : 0.5);
        if (back.cost < Math.min(over.cost, worst.cost)) all[n] = back;
        else {
          const best = all[0]!;
          all = all.map((each, k) => {
            if (k === 0) return each;
            const at = each.at.map((x, i) => (x + best.at[i]!) / 2);
            return { at, cost: cost(at) };
          });
        }
      }
    }
    return Math.min(...all.map((each) => each.cost));
  };
  const plan = sizes.map(() => 0);
  return Math.min(from(plan), from(sizes), from(sizes.map((size) => -size)));
}

interface Case {
  readonly tube: SolvedTube;
  readonly run: { readonly order: readonly BendStep[]; readonly bends: readonly BentBend[] };
  readonly truth: readonly BentBend[];
  readonly figures: readonly TapeFigure[];
}

/** Chance that is the same each time: normal deviates of mean 0 and deviation 1, and whole numbers of a range (Box and Muller). */
function chance(seed: number) {
  const even = uniformFrom(seed * 0x9e3779b9);
  return {
    normal: (): number => Math.sqrt(-2 * Math.log(1 - even())) * Math.cos(2 * Math.PI * even()),
    oneOf: <T>(all: readonly T[]): T => all[Math.floor(even() * all.length)]!,
    between: (least: number, most: number): number => Math.round(least + even() * (most - least)),
  };
}

/** mm a degree, from a bend's middle to its tangent nearer the end in front. */
const halfArc = (front: 'A' | 'B', radius: number): number => ((front === 'A' ? -1 : 1) * radius * Math.PI) / 360;

/** A tube with known errors, drawn as the fit expects them, and read with so much of error, mm. */
function made(
  path: readonly Triple[],
  front: 'A' | 'B',
  errors: readonly number[],
  noise: readonly number[],
  tape: number,
): Case {
  const tube = bar(path);
  const run = { order: order(tube, front), bends: [] };
  const blank = onBlank(tube, run.order);
  const plan = asBent(tube, run);
  const degrees = (radians: number): number => (radians * 180) / Math.PI;
  const truth = plan.bends.map((bend, i): BentBend => ({
    bend: i + 1,
    pulled: 0,
    net: degrees(bend.angle) + 1.5 * errors[3 * i]!,
    ...(i > 0 && { rotation: degrees(bend.rotation) + 2 * errors[3 * i + 1]! }),
    // Its middle is off; the mark lies half of the arc before it, or behind.
    start: blank.starts[i]! + 3 * errors[3 * i + 2]! + halfArc(front, bend.radius) * 1.5 * errors[3 * i]!,
    fitted: true,
  }));
  const built = asBent(tube, { ...run, bends: truth });
  const figures = plan.checks.flatMap(({ id, lies, kind }, k): TapeFigure[] => {
    const real = built.checks.find((check) => check.id === id);
    if (real === undefined) return [];
    const figure = { id, lies, kind, measured: Math.max(0, real.value + tape * noise[k]!) };
    if (id !== 'stands-off') return [figure];
    if (lies.along === 'ends') return real.value === 0 ? [figure] : [onSide(figure, real.lies.turns)];
    return real.lies.turns === lies.turns && real.lies.highest === lies.highest ? [figure] : [];
  });
  return { tube, run, truth, figures };
}

/** Errors as the fit expects them, times `errors`; each figure off by so many mm, on the whole. */
function hoop(seed: number, tape: number, errors = 1): Case {
  const { normal, oneOf, between } = chance(seed);
  const shape = oneOf(['elbow', 'hoop', 'twisted', 'main']);
  const lean = oneOf([0, 0, 120, -250]);
  const path = HOOPS(between(700, 1300), between(700, 1300), lean)[shape]!;
  const draw = (count: number): number[] => Array.from({ length: count }, normal);
  return made(
    path,
    oneOf(['A', 'B']),
    draw(12).map((each) => each * errors),
    draw(8),
    tape,
  );
}

const fitOf = ({ tube, run, figures }: Case, tape: number): TapeFit =>
  fitTape(tube, run, onBlank(tube, run.order), figures, tape)!;

const trueOf = ({ truth }: Case, part: TapeFit['parts'][number]): number => {
  const bend = truth[part.bend - 1]!;
  return { angle: bend.net, rotation: bend.rotation ?? 0, middle: bend.start! - part.toMark * bend.net }[part.what];
};

/** What the fit holds against a tube, reckoned afresh: misses and errors by their deviations, squared. */
function costOf({ tube, run, figures }: Case, fit: TapeFit, tape: number, values: readonly number[]): number {
  const bends = fittedBends(
    fit.parts.map((part, i) => ({ ...part, value: values[i]! })),
    [],
  );
  const { form } = asBent(tube, { ...run, bends });
  const misses = figures.map((figure) => (figure.measured - tapedAs(form, figure)) / tape);
  const errors = fit.parts.map(({ what, expected }, i) => (values[i]! - expected) / DEVIATIONS[what]);
  return [...misses, ...errors].reduce((sum, each) => sum + each * each, 0);
}

describe('hoops with known errors, read to half a millimetre', () => {
  const cases = Array.from({ length: howMany(24, 300) }, (_, i) => hoop(i + 1, 0.5));
  const fits = cases.map((one) => ({ one, fit: fitOf(one, 0.5) }));
  const parts = fits.flatMap(({ one, fit }) =>
    fit.parts.map((part) => ({ part, off: Math.abs(part.value - trueOf(one, part)) })),
  );
  const within = (of: typeof parts): number =>
    of.filter(({ part, off }) => off <= 1.96 * part.deviation).length / of.length;

  it('came out as the fit says in 90 to 99 of 100', () => {
    const share = within(parts);
    expect(share).toBeGreaterThan(0.9);
    expect(share).toBeLessThan(0.99);
  });
  it('leave angles far surer than they were, and nothing but what is told moves', () => {
    const angles = parts.filter(({ part }) => part.what === 'angle' && part.told);
    const median = angles.map(({ part }) => part.deviation).toSorted((a, b) => a - b)[angles.length >> 1]!;
    expect(median).toBeLessThan(0.3);
    for (const { part } of parts)
      if (!part.told) expect([part.value, part.deviation]).toEqual([part.expected, DEVIATIONS[part.what]]);
  });
  it('may be taken over, but for what chance leaves out', () => {
    const taken = fits.filter(({ fit }) => fit.no === null && fit.figures.every(({ others }) => others === null));
    expect(taken.length / fits.length).toBeGreaterThan(0.95);
  });
  it('are no farther from plan and figures than what a search without slopes finds from many places', () => {
    for (const { one, fit } of fits.slice(0, howMany(2, 30))) {
      // Where all is told, so that the values are those of the least.
      if (!fit.parts.every(({ told }) => told) || fit.figures.some(({ others }) => others !== null)) continue;
      const mine = costOf(
        one,
        fit,
        0.5,
        fit.parts.map(({ value }) => value),
      );
      const search = simplex(
        fit.parts.map(({ what }) => DEVIATIONS[what]),
        (moves) =>
          costOf(
            one,
            fit,
            0.5,
            fit.parts.map(({ expected }, i) => expected + moves[i]!),
          ),
      );
      expect(mine).toBeLessThan(search + 0.05);
    }
  });
  it('come out the same whatever order they are read in', () => {
    for (const { one, fit } of fits.slice(0, howMany(4, 8))) {
      const other = fitOf({ ...one, figures: one.figures.toReversed() }, 0.5);
      expect(other).toEqual(fit);
    }
  });
});

it('meets figures without error to 1e-6 where they tell all', () => {
  let met = 0;
  for (let seed = 1; seed <= howMany(4, 60); seed++) {
    const one = hoop(seed, 0, 0.5);
    const fit = fitOf(one, 1e-4);
    for (const part of fit.parts) {
      if (part.deviation > 1e-3 * DEVIATIONS[part.what]) continue;
      met += 1;
      expect(Math.abs(part.value - trueOf(one, part))).toBeLessThan(1e-6);
    }
  }
  expect(met).toBeGreaterThan(howMany(4, 60));
});

/** A flat U of 1 000 by 900, both bends 90 degrees. */
const plain = (errors: readonly number[] = [], front: 'A' | 'B' = 'A'): Case =>
  made(
    HOOPS(1000, 900, 0)['hoop']!,
    front,
    [...errors, ...Array.from({ length: 12 }, () => 0)],
    Array.from({ length: 8 }, () => 0),
    0,
  );
const only = (one: Case, ...ids: readonly string[]): Case => ({
  ...one,
  figures: one.figures.filter(({ id }) => ids.includes(id)),
});
const off = (one: Case, by: Partial<Record<string, number>>): Case => ({
  ...one,
  figures: one.figures.map((figure) => ({ ...figure, measured: figure.measured + (by[figure.id] ?? 0) })),
});
const words = (fit: TapeFit): string => Object.values(fitInWords(fit, 'mm')).flat().join(' ');

describe('what the figures do not tell', () => {
  it('by the chord alone: rotation and marks stay as planned, and the two angles are told only together', () => {
    const fit = fitOf(only(plain(), 'chord'), 1);
    const [a, markA, b, rotation, markB] = fit.parts;
    for (const part of [markA!, rotation!, markB!]) expect([part.told, part.value]).toEqual([false, part.expected]);
    // One direction of two is told: of the squares of what was not known one is left.
    expect(a!.told && b!.told).toBe(true);
    expect(a!.deviation ** 2 + b!.deviation ** 2).toBeCloseTo(1.5 ** 2, 1);
    expect(fit.together).toEqual([[0, 2]]);
    expect(words(fit)).toContain(
      'The figures do not tell where bend 1 lies, the rotation of bend 2 and where bend 2 lies: left as planned.',
    );
    expect(words(fit)).toContain('The angle of bend 1 and the angle of bend 2 are told only together');
  });
  it('off flat without a side: the rotation stays as planned; with the side it is told, and its sign goes by that', () => {
    const twisted = plain([0, 0, 0, 0, 1]);
    const sided = twisted.figures.find(({ id }) => id === 'stands-off')!;
    const lies = { ...sided.lies, along: 'ends' } as const;
    const open = fitOf(
      { ...twisted, figures: twisted.figures.map((figure) => (figure === sided ? { ...figure, lies } : figure)) },
      1,
    );
    expect(open.sideOpen).toBe(true);
    expect(open.parts[3]).toMatchObject({ what: 'rotation', told: false, value: open.parts[3]!.expected });
    expect(fitOf(twisted, 1).parts[3]!.value).toBeCloseTo(2, 1);
    const other = onSide(sided, sided.lies.turns === 'left' ? 'right' : 'left');
    const turned = fitOf(
      { ...twisted, figures: twisted.figures.map((figure) => (figure === sided ? other : figure)) },
      1,
    );
    expect(turned.parts[3]!.value).toBeCloseTo(-2, 1);
  });
  it('nothing at all: nothing is taken over', () => {
    const { tube, run } = plain();
    expect(fitTape(tube, run, onBlank(tube, run.order), [])).toBe(null);
    const one = plain();
    const nearly = fitOf(only(one, 'chord'), 1000);
    expect(nearly.no).toEqual({ why: 'nothing-told' });
    expect(nearly.parts.every(({ value, expected }) => value === expected)).toBe(true);
  });
});

describe('figures that do not agree', () => {
  it('one that is misread is named with what the others say, and left out', () => {
    const one = plain([0.7, 0, 0.4, -0.5, 0, 0.3]);
    const { measured } = one.figures.find(({ id }) => id === 'chord')!;
    const fit = fitOf(off(one, { chord: 40 }), 1);
    expect(fit.no).toBe(null);
    const chord = fit.figures.find(({ id }) => id === 'chord')!;
    expect(Math.abs(chord.others! - measured)).toBeLessThan(2);
    expect(fit.figures.filter(({ others }) => others !== null)).toHaveLength(1);
    expect(words(fit)).toMatch(
      /^“End to end, centre to centre” does not agree with the rest: measure it again; the others say \d+(\.\d)? mm\./,
    );
    // As if it had not been read.
    const without = fitOf({ ...one, figures: one.figures.filter(({ id }) => id !== 'chord') }, 1);
    fit.parts.forEach(({ value }, i) => expect(value).toBeCloseTo(without.parts[i]!.value, 6));
  });
  it('two that are misread are no tube of this plan', () => {
    const fit = fitOf(off(plain(), { chord: 60, 'diagonal-a': -80, height: 50 }), 1);
    expect(fit.no).not.toBe(null);
    expect(fit.no!.why).not.toBe('nothing-told');
  });
  it('another tube of the rack, 200 wider, is not taken', () => {
    const other = made(
      HOOPS(1200, 900, 0)['hoop']!,
      'A',
      Array.from({ length: 12 }, () => 0),
      Array.from({ length: 8 }, () => 0),
      0,
    );
    expect(fitOf({ ...plain(), figures: other.figures }, 1).no).toEqual({ why: 'another-tube' });
  });
  it.each([
    ['chord', -1e5, 'short'],
    ['chord', 1e5, 'long'],
    ['width', -1010, 'short'],
    ['diagonal-b', 5000, 'long'],
    ['stands-off', -5, 'short'],
    ['stands-off', 9000, 'long'],
  ])('%s by %d: no tube reads so', (id, by, beyond) => {
    const fit = fitOf(off(plain(), { [id]: by }), 1);
    expect(fit.no).toEqual({ why: 'impossible', id, beyond });
    expect(words(fit)).toContain('cannot be');
  });
});

describe('in a run', () => {
  it('what was read by hand is known better, and keeps its radius; what was fitted before is not counted twice', () => {
    const one = plain([0.5, 0, 0, -0.5]);
    const hand: BentBend = { bend: 1, pulled: 94, net: 90.7, start: 745 };
    const at = { ...one, run: { ...one.run, bends: [hand] } };
    const fit = fitOf(at, 1);
    expect(fit.parts[0]!.isRead).toBe(true);
    expect(fit.parts[0]!.expected).toBeCloseTo(90.7, 9);
    expect(fit.parts[0]!.deviation).toBeLessThanOrEqual(0.2);
    expect(fit.marks[0]!.expected).toBeCloseTo(745, 9);
    const bends = takenOver(fit.parts, [hand]);
    expect(bends).toMatchObject([
      { bend: 1, pulled: 94, read: { net: 90.7, start: 745 }, fitted: true },
      { bend: 2, fitted: true },
    ]);
    expect(bends[1]).not.toHaveProperty('read');
    const { bends: built } = asBent(one.tube, { ...one.run, bends });
    expect(built.map(({ radius }) => radius)).toEqual([(150 * 94) / 90.7, 150]);
    expect(fitOf({ ...at, run: { ...at.run, bends } }, 1)).toEqual(fit);
  });
});

describe('counted from either end', () => {
  /** The same steel, told from end B, read by the same tape. */
  const reversed = ({ tube, run, figures }: Case): Case => {
    const other = bar(tube.corners.toReversed(), [tube.ends[1].allowance, tube.ends[0].allowance]);
    const swapped = { 'diagonal-a': 'diagonal-b', 'diagonal-b': 'diagonal-a' } as const;
    return {
      tube: other,
      run: { ...run, order: order(other, run.order[0]!.front) },
      truth: [],
      figures: figures.map((figure) => ({ ...figure, id: swapped[figure.id as 'diagonal-a'] ?? figure.id })),
    };
  };
  const near = (a: number, b: number) => expect(Math.abs(a - b)).toBeLessThan(1e-9);
  /** Of a flat tube: by what it is and which bend, from the other end. */
  const mirrors = (one: Case, fit: TapeFit, other: TapeFit): void => {
    const count = one.tube.bends.length;
    for (const part of fit.parts) {
      const bend = part.what === 'rotation' ? count + 2 - part.bend : count + 1 - part.bend;
      const twin = other.parts.find((each) => each.what === part.what && each.bend === bend)!;
      near(part.deviation, twin.deviation);
      expect(part.told).toBe(twin.told);
      near(part.value, part.what === 'middle' ? one.tube.developedLength - twin.value : twin.value);
    }
  };

  it('the bends come out the same, whichever end the order has in front', () => {
    const { normal, oneOf, between } = chance(33);
    for (let i = 0; i < howMany(3, 200); i++) {
      const path = HOOPS(between(700, 1300), between(700, 1300), 0)[oneOf(['hoop', 'main'])]!;
      const errors = Array.from({ length: 12 }, (_, k) => (k % 3 === 1 ? 0 : normal()));
      const noise = Array.from({ length: 8 }, (_, k) => (k === 7 ? 0 : 0.5 * normal()));
      const one = made(path, oneOf(['A', 'B']), errors, noise, 1);
      mirrors(one, fitOf(one, 1), fitOf(reversed(one), 1));
      const front = one.run.order[0]!.front === 'A' ? 'B' : 'A';
      const fedOtherwise = fitOf({ ...one, run: { ...one.run, order: order(one.tube, front) } }, 1);
      fitOf(one, 1).parts.forEach(({ value }, k) => near(value, fedOtherwise.parts[k]!.value));
    }
  });

  it('a hoop that is the same from both ends, read alike on both sides, has the same bends on both', () => {
    for (const [name, by] of [
      ['hoop', { width: 6, 'legs-at-ends': 6, 'diagonal-a': 3, 'diagonal-b': 3 }],
      ['main', { width: 4, height: -3, 'diagonal-a': 2, 'diagonal-b': 2 }],
      ['main', { width: -5 }],
    ] as const) {
      const tube = bar(HOOPS(1000, 900, 0)[name]!, [0, 0]);
      const run = { order: order(tube, 'A'), bends: [] };
      // As a tape reads: to a tenth.
      const figures = asBent(tube, run).checks.map(({ id, lies, kind, value }) => ({
        id,
        lies,
        kind,
        measured: Math.round(10 * value) / 10,
      }));
      const one = off(only({ tube, run, truth: [], figures }, ...Object.keys(by)), by);
      const fit = fitOf(one, 1);
      mirrors(one, fit, fit);
      expect(fit.parts.some(({ value, expected }) => Math.abs(value - expected) > 0.05)).toBe(true);
    }
  });
});

it('starts count from the zero of the tape marks, less the grip that is sawn off there', () => {
  for (const front of ['A', 'B'] as const) {
    for (const from of ['A', 'B'] as const) {
      const one = plain([], front);
      const list = tapeList(one.tube, { from, mark: 'start', step: 1, order: one.run.order })!;
      const length = one.tube.developedLength;
      const zero = sawnZero(one.tube, length, from);
      for (const { bend, expected } of fitOf(one, 1).marks) {
        const { exact } = list.steps.find((step) => step.bend === bend)!.marks[0]!;
        expect(Math.abs(expected - zero)).toBeCloseTo(exact - list.grip[from === 'A' ? 0 : 1], 6);
      }
    }
  }
});
