/**
 * What a person is given to pull to. The worked law of the numbers: pulled = net + 0.8 + 0.04 net, so 60 takes 63.2 and 25 takes 26.8.
 */
import fc from 'fast-check';
import jstat from 'jstat';
import { linearRegression, mean, standardDeviation } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import {
  borneRange,
  furtherPulls,
  greatestPull,
  isBorne,
  mendingPull,
  pullAdvice,
  SURE,
  type PullAdvice,
} from '../../../src/core/springback/pull-advice.ts';
import { pulledFor, pullLaw, READING } from '../../../src/core/springback/pull-law.ts';
import { mendInWords, pullFigure, pullNote, whyInWords } from '../../../src/core/words/pulls.ts';
import { degrees } from '../frame.ts';
import { die, lawOf, pulls, radians, section, type Read } from './worked-die.ts';

const advice = (net: number, read: readonly Read[], step = 0.5): PullAdvice =>
  pullAdvice(lawOf(...read), radians(net), step);

const WORKED: readonly Read[] = [
  [26.8, 25],
  [63.2, 60],
];
const CLOSE: readonly Read[] = [
  [22, 20],
  [23.4, 21],
];

describe('the number to pull to', () => {
  it('is the law’s where the log bears it, on the machine’s scale', () => {
    // 90 + 0.8 + 3.6
    expect(advice(90, WORKED)).toMatchObject({ kind: 'law', pullTo: 94.5, within: null });
    expect(advice(90, WORKED, 0.1)).toMatchObject({ kind: 'law', pullTo: 94.4 });
    expect(advice(60, WORKED, 0.25)).toMatchObject({ kind: 'law', pullTo: 63.25 });
    expect(pullFigure(advice(60, WORKED, 0.25))).toBe('63.25°');
    expect(pullFigure(advice(90, WORKED))).toBe('94.5°');
  });
  it('of two close pulls is a first pull: their line asks 120 for 90', () => {
    expect(degrees(pulledFor(lawOf(...CLOSE), radians(90)))).toBeCloseTo(120, 9);
    // Their mean excess is 2.2.
    expect(advice(90, CLOSE)).toEqual({ kind: 'first', pullTo: 92, why: 'slack-or-spring' });
    expect(advice(90, CLOSE, 0.1)).toMatchObject({ pullTo: 92.2 });
    expect(advice(20.5, CLOSE, 0.1)).toMatchObject({ kind: 'law', pullTo: 22.7 });
  });
  it('of one small pull is a first pull: laid all to spring it asks 104.3', () => {
    const small: readonly Read[] = [[14.6, 12.6]];
    expect(degrees(pulledFor(lawOf(...small), radians(90)))).toBeCloseTo(104.29, 2);
    expect(advice(90, small)).toEqual({ kind: 'first', pullTo: 92, why: 'slack-or-spring' });
    expect(advice(12.6, small, 0.1)).toMatchObject({ kind: 'law', pullTo: 14.6 });
  });
  it('of a large pull alone stays short of a small bend too: that may be all spring', () => {
    expect(advice(10, [[94.4, 90]], 0.1)).toEqual({ kind: 'first', pullTo: 10.4, why: 'slack-or-spring' });
  });
  it('far outside the pulls is a first pull', () => {
    expect(advice(150, WORKED)).toEqual({ kind: 'first', pullTo: 152.5, why: 'too-far' });
  });
  it('of pulls that disagree is what the one asks that asks least', () => {
    for (const read of [
      // Two at one angle, 4 and 8 degrees of excess.
      [
        [64, 60],
        [68, 60],
      ],
      // Spring less than nothing.
      [
        [26.8, 25],
        [60.2, 60],
      ],
      // Slack less than nothing: 0.2 for 20, 7 for 80.
      [
        [20.2, 20],
        [87, 80],
      ],
      // A figure written wrong.
      [
        [63.2, 60],
        [65, 6.1],
      ],
      // No two at one angle, yet they scatter by degrees about any line.
      [
        [22, 20],
        [46, 40],
        [63, 60],
        [86.5, 80],
      ],
    ] as const)
      expect(advice(60, read), JSON.stringify(read)).toMatchObject({ kind: 'first', why: 'disagree' });
    expect(
      advice(60, [
        [64, 60],
        [68, 60],
      ]),
    ).toMatchObject({ pullTo: 64 });
    expect(
      advice(60, [
        [63.2, 60],
        [65, 6.1],
      ]),
    ).toMatchObject({ pullTo: 63 });
    expect(advice(60, [[65, 6.1]])).toMatchObject({ pullTo: 60, why: 'disagree' });
  });
  it('without pulls is the estimate, to start at; of a steel that is not known the net angle itself', () => {
    // Elastic recovery of this tube over 90 degrees is 1.698 (docs/maths/springback.md).
    expect(advice(90, [])).toMatchObject({ kind: 'estimate', pullTo: 91.5 });
    // Common practice: 2 to 6 degrees past the finished angle in all. 96 asked, started at 91.5: 4.5 short.
    expect(advice(90, [])).toMatchObject({ short: expect.closeTo(4.5, 9) });
    expect(pullAdvice(null, radians(39.18), 0.5)).toEqual({ kind: 'first', pullTo: 39, why: 'nothing-known' });
  });
  it('is a first pull where the machine’s scale has no division within half a degree of it', () => {
    // The law asks 62.68: on a scale of 5 degrees 65 is the nearest, and scrap.
    expect(advice(59.5, WORKED, 5)).toEqual({ kind: 'first', pullTo: 60, why: 'coarse-scale' });
    expect(advice(59.5, WORKED, 1)).toMatchObject({ kind: 'law', pullTo: 63 });
    expect(advice(90, [], 45)).toEqual({ kind: 'first', pullTo: 90, why: 'coarse-scale' });
  });
  it('rounds a first pull down, never past what it is short of', () => {
    expect(advice(90, CLOSE, 1)).toMatchObject({ pullTo: 92 });
    expect(advice(90.4, CLOSE, 0.5)).toMatchObject({ pullTo: 92.5 });
    expect(advice(90.7, CLOSE, 0.5)).toMatchObject({ pullTo: 92.5 });
  });
});

describe('the most that a bend can take', () => {
  it('is the law’s where the log bears it, and elsewhere no less than whatever slack and spring add up to the pulls', () => {
    const reads = fc.tuple(
      fc.double({ min: 0, max: 3, noNaN: true }),
      fc.double({ min: 0, max: 0.1, noNaN: true }),
      fc.double({ min: 10, max: 120, noNaN: true }),
      fc.double({ min: 5, max: 150, noNaN: true }),
    );
    fc.assert(
      fc.property(reads, ([a, b, pulledAt, net]) => {
        const made = (angle: number): number => angle + a + b * angle;
        const law = lawOf([made(pulledAt), pulledAt]);
        expect(degrees(greatestPull(law, radians(net)))).toBeGreaterThan(
          made(net) - (isBorne(law, radians(net)) ? 1.25 : 1e-9),
        );
      }),
      { seed: 20261128, numRuns: 500 },
    );
    expect(degrees(greatestPull(lawOf(...WORKED), radians(90)))).toBeCloseTo(94.4, 9);
    // 3.2 for 60 grows to 4.8 for 90; of two that disagree the one that asks more.
    expect(degrees(greatestPull(lawOf([63.2, 60]), radians(90)))).toBeCloseTo(94.8, 9);
    expect(degrees(greatestPull(lawOf([64, 60], [68, 60]), radians(90)))).toBeCloseTo(102, 9);
  });
});

describe('whatever slack and spring really are', () => {
  // Slack to 3 degrees and spring to 10 %: as much as is met with, and more (common practice).
  const truth = fc.record({
    a: fc.double({ min: 0, max: 3, noNaN: true }),
    b: fc.double({ min: 0, max: 0.1, noNaN: true }),
  });
  const net = fc.double({ min: 2, max: 170, noNaN: true });

  it('of pulls read without error a first pull is never too far, and the law’s number comes right', () => {
    fc.assert(
      fc.property(truth, fc.array(net, { minLength: 1, maxLength: 6 }), net, ({ a, b }, nets, asked) => {
        const right = (angle: number) => angle + a + b * angle;
        const given = advice(
          asked,
          nets.map((angle): Read => [right(angle), angle]),
          0.1,
        );
        if (given.kind === 'first') {
          expect(given.why).not.toBe('disagree');
          expect(given.pullTo).toBeLessThanOrEqual(right(asked) + 1e-6);
          expect(given.pullTo).toBeGreaterThan(asked - 0.1 - 1e-6);
        } else expect(Math.abs(given.pullTo - right(asked))).toBeLessThanOrEqual(degrees(SURE) + 0.05 + 1e-6);
      }),
      { seed: 20260310, numRuns: 600 },
    );
  });

  it('of pulls read to 0.2 degrees one in forty goes further than SURE past what is right, no more', () => {
    const random = seeded(20260311);
    const normal = () => Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random());
    let [tooFar, laws] = [0, 0];
    for (let trial = 0; trial < 2000; trial++) {
      const [a, b] = [0.5 + 1.5 * random(), 0.02 + 0.04 * random()];
      const right = (angle: number) => angle + a + b * angle;
      const read = Array.from({ length: 2 + Math.floor(3 * random()) }, (): Read => {
        const angle = 10 + 90 * random();
        return [right(angle) + 0.2 * normal(), angle];
      });
      const asked = 10 + 110 * random();
      const given = advice(asked, read, 0.01);
      if (given.kind === 'law') laws += 1;
      if (given.pullTo > right(asked) + degrees(SURE)) tooFar += 1;
    }
    expect(laws).toBeGreaterThan(750);
    expect(tooFar / 2000).toBeLessThan(0.025);
  });

  it('one more true pull where it says so bears every bend of the tube', () => {
    fc.assert(
      fc.property(
        truth,
        fc.array(net, { minLength: 1, maxLength: 3 }),
        fc.array(fc.double({ min: 10, max: 120, noNaN: true }), { minLength: 1, maxLength: 4 }),
        ({ a, b }, logged, bends) => {
          const read = (angle: number): Read => [angle + a + b * angle, angle];
          const law = lawOf(...logged.map(read));
          const nets = bends.map(radians);
          fc.pre(!nets.every((each) => isBorne(law, each)));
          const more = lawOf(...logged.map(read), read(mendingPull(law, nets)));
          expect(nets.every((each) => isBorne(more, each))).toBe(true);
        },
      ),
      { seed: 20260312, numRuns: 300 },
    );
  });
});

describe('how sure the law is', () => {
  const read: readonly Read[] = [
    [22.3, 20],
    [35.1, 33],
    [64, 60],
    [81.9, 78],
    [92.6, 88],
  ];
  it('is the prediction interval of a general linear model with the known readings in it (jstat’s matrices)', () => {
    // READING stands for 11 readings of something else, with a mean of their own, that scatter by 0.2: another column of the model.
    const spread = Math.sqrt((READING.freedom * degrees(READING.deviation) ** 2) / 10);
    const known = Array.from({ length: 10 }, (_, i) => (i % 2 === 0 ? spread : -spread)).concat(0);
    const rows = [...read.map(([, net]) => [1, net, 0]), ...known.map(() => [0, 0, 1])];
    const values = [...read.map(([pulled, net]) => pulled - net), ...known];
    const at = [1, 50, 0];

    const turned = jstat.transpose(rows);
    const inverse = jstat.inv(jstat.multiply(turned, rows));
    const byRows = jstat.multiply(inverse, turned);
    const found = byRows.map((row) => row.reduce((sum, each, i) => sum + each * values[i]!, 0));
    const residuals = values.map((value, i) => value - rows[i]!.reduce((sum, each, k) => sum + each * found[k]!, 0));
    const freedom = rows.length - 3;
    const deviation = Math.sqrt(residuals.reduce((sum, each) => sum + each * each, 0) / freedom);
    const leverage = at.reduce((sum, p, i) => sum + at.reduce((inner, q, k) => inner + p * inverse[i]![k]! * q, 0), 0);
    const expected = jstat.studentt.inv(0.975, freedom) * deviation * Math.sqrt(1 + leverage);

    expect(degrees(furtherPulls(lawOf(...read), radians(50))!)).toBeCloseTo(expected, 4);
  });
  it('of pulls at one angle: their scatter pooled with the readings’ (simple-statistics), and what slack or spring leaves open', () => {
    const same: readonly Read[] = [
      [62.9, 60],
      [63.2, 60],
      [63.6, 60],
    ];
    const excess = same.map(([pulled, net]) => pulled - net);
    const squares = 3 * standardDeviation(excess) ** 2;
    const one = jstat.studentt.inv(0.975, 12) * Math.sqrt((10 * 0.04 + squares) / 12) * Math.sqrt(1 + 1 / 3);
    const law = lawOf(...same);
    expect(degrees(furtherPulls(law, radians(60))!)).toBeCloseTo(one, 4);
    // At 66, a tenth more, all spring asks a tenth more of the excess than all slack.
    expect(degrees(furtherPulls(law, radians(66))!)).toBeCloseTo(one + mean(excess) / 10, 4);
  });
  it('is said only from three pulls on', () => {
    expect(advice(60, WORKED)).toMatchObject({ within: null });
    const three = advice(60, [...WORKED, [94.4, 90]]);
    expect(three.kind === 'law' && degrees(three.within!)).toBeCloseTo(0.49, 1);
  });
  it('bears a range of bends about the pulls, wider the wider they lie', () => {
    const wide = borneRange(lawOf(...WORKED))!;
    expect([wide.least, wide.greatest]).toEqual([1, 104]);
    const narrow = borneRange(lawOf(...CLOSE))!;
    expect(narrow.greatest - narrow.least).toBeLessThan(5);
    expect(narrow.least).toBeGreaterThanOrEqual(19);
    expect(borneRange(lawOf([64, 60], [68, 60]))).toBeNull();
  });
  it('goes by the line of a general statistics library (simple-statistics)', () => {
    const { m, b } = linearRegression(read.map(([pulled, net]) => [net, pulled - net]));
    const given = advice(70, read, 0.001);
    expect(given.pullTo).toBeCloseTo(70 + b + 70 * m, 3);
  });
});

describe('in words', () => {
  const note = (nets: readonly number[], read: readonly Read[]) => {
    const law = lawOf(...read);
    const asked = nets.map(radians);
    return pullNote(
      law,
      asked.map((net) => pullAdvice(law, net, 0.5)),
      mendingPull(law, asked),
    );
  };
  it('says where the numbers come from, and why there are only first pulls and what mends that', () => {
    expect(note([40, 90], WORKED)).toBe('“Pull to” is from 2 pulls in the log.');
    expect(note([40], [...WORKED, [94.4, 90]])).toContain(
      '3 pulls in the log; “known to”: 95 % of further pulls lie as near.',
    );
    expect(note([20.5, 88], CLOSE)).toBe(
      '“Pull to” is from 2 pulls in the log. A first pull is short of what is right, as pulls this close together cannot tell slack from spring: let go, read, then go on. One more pull to a finished angle near 90° mends that: this first pull, read and logged, is one.',
    );
    expect(
      note(
        [60],
        [
          [64, 60],
          [68, 60],
        ],
      ),
    ).toMatch(/the pulls in the log disagree.*take out what was misread.*near 60°/u);
    expect(note([150], WORKED)).toMatch(/do not reach that far.*near 150°/u);
    expect(note([60], [])).toMatch(/“Start at”: the steel’s spring alone; 2° to 6° in all/u);
  });
  it('of pulls of several batches that disagree says that batches differ', () => {
    const two = pulls([64, 60], [68, 60]).map((pull, i) => ({ ...pull, batch: `H-${i}` }));
    const law = pullLaw(two, die, section, undefined);
    expect(pullAdvice(law, radians(60), 0.5)).toMatchObject({ why: 'disagree' });
    expect(mendInWords('disagree', law, 60)).toContain('Batches differ');
    expect(whyInWords('slack-or-spring', lawOf([64, 60]))).toBe('pulls at one angle cannot tell slack from spring');
  });
});

/** 0 to 1 from a small seeded generator (mulberry32). */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return (((t ^ (t >>> 14)) >>> 0) + 0.5) / 4294967296;
  };
}
