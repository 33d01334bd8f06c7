import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { tapeList, type TapeSetting, type TapeList } from '../../../src/core/marks/tape.ts';
import { isSymmetricHoop } from '../../../src/core/solve/symmetric.ts';
import { derive } from '../../../src/core/derive.ts';
import type { SolvedTube } from '../../../src/core/solve/types.ts';
import { corners, fixed, place, type Triple } from '../../laws/frames.ts';
import { degrees, jobOf } from '../frame.ts';
import { across, bentFrom, endFrames, gapBetween } from '../run/bent.ts';
import { bendOnMachine } from '../run/machine.ts';
import { drawn as howMany } from '../../draws.ts';

const INCH = 25.4;
const SIXTEENTH = INCH / 16;
const THIRTY_SECOND = INCH / 32;
/** CLR 4.5 in, clamp offset three quarters of it. */
const PLAIN_DIE = { id: 'd', outerDiameter: 44.45, centrelineRadius: 114.3, clampOffset: 85.725, leastGrip: 150 };

function bar(
  path: readonly Triple[],
  allowances: readonly [number, number] = [0, 0],
  bendLies?: 'beyond' | 'before',
): SolvedTube | null {
  const DIE = bendLies === undefined ? PLAIN_DIE : { ...PLAIN_DIE, bender: { bendLies } };
  const nodes = Object.fromEntries(path.map((each, i) => [`n${i}`, each]));
  const ends = allowances.map((allowance) => ({ fit: 'square', allowance }));
  const derivation = derive(jobOf({ nodes, dies: [DIE], members: [{ id: 'bar', path: Object.keys(nodes), ends }] }));
  return derivation.ok ? derivation.value.byId.get('bar')! : null;
}

const mustBar = (...given: Parameters<typeof bar>): SolvedTube => bar(...given)!;
const tapeOf = (tube: SolvedTube, setting: Partial<TapeSetting>): TapeList =>
  tapeList(tube, { from: 'A', mark: 'start', step: SIXTEENTH, ...setting })!;
const inches = (tape: TapeList): number[][] =>
  tape.steps.map(({ marks }) => marks.map(({ at }) => Number((at / INCH).toFixed(9))));

/** Legs of 20 and 30 in at a right angle: T = 4.5, arc 4.5 pi/2 = 7.0686 in, straights 15.5 and 25.5 in. */
const ELBOW: Triple[] = [
  [0, 0, 0],
  [0, 0, 508],
  [762, 0, 508],
];

const mirrored = ([x, y, z]: Triple): Triple => [x, -y, z];
/** Legs that lean back from the plane of the top: the plane turns between bends 1 and 2, and back between 3 and 4. */
const HALF: Triple[] = [
  [-150, 640, 0],
  [0, 620, 500],
  [0, 450, 1050],
];
const HOOP: Triple[] = [...HALF, ...HALF.toReversed().map(mirrored)];

describe('marks on the tape', () => {
  it('from end A: 15 1/2, clamp 12 1/8, middle 19 1/16, tangents 15 1/2 and 22 9/16', () => {
    const elbow = mustBar(ELBOW);
    const marks = (mark: TapeSetting['mark']) => inches(tapeOf(elbow, { mark }))[0];
    expect(marks('start')).toEqual([15.5]);
    expect(marks('clamp')).toEqual([12.125]);
    expect(marks('middle')).toEqual([19.0625]);
    expect(marks('tangents')).toEqual([15.5, 22.5625]);
  });
  it("from end B: 25 1/2; the clamp counts from the bend's other tangent, 22 1/8", () => {
    const elbow = mustBar(ELBOW);
    expect(inches(tapeOf(elbow, { from: 'B' }))).toEqual([[25.5]]);
    expect(inches(tapeOf(elbow, { from: 'B', mark: 'clamp' }))).toEqual([[22.125]]);
    expect(tapeOf(elbow, { from: 'B' }).zero).toBeCloseTo(48.0686 * INCH, 2);
  });
  it('says on which side of the mark the bend lies', () => {
    const sides = (mark: TapeSetting['mark'], from: 'A' | 'B') =>
      tapeOf(mustBar(ELBOW), { mark, from }).steps[0]!.marks.map(({ bendLies }) => bendLies);
    for (const from of ['A', 'B'] as const) {
      expect(sides('start', from)).toEqual(['beyond']);
      expect(sides('clamp', from)).toEqual(['beyond']);
      expect(sides('middle', from)).toEqual(['either-side']);
      expect(sides('tangents', from)).toEqual(['beyond', 'before']);
    }
  });
  it('the two tangents stand an arc apart: 0.0785 in a degree at CLR 4.5 in', () => {
    for (const turn of [72, 31]) {
      const t = (turn * Math.PI) / 180;
      const tube = mustBar([ELBOW[0]!, ELBOW[1]!, [600 * Math.sin(t), 0, 508 + 600 * Math.cos(t)]]);
      const [start, end] = tapeOf(tube, { mark: 'tangents', step: 0.001 }).steps[0]!.marks;
      const arc = (end!.at - start!.at) / INCH;
      expect(arc / turn).toBeCloseTo(0.0785, 4);
    }
  });
  it('counts from the sawn end of the blank: an allowance moves every mark, once', () => {
    const left = mustBar(ELBOW, [25.4, 12.7]);
    expect(inches(tapeOf(left, {}))).toEqual([[16.5]]);
    expect(inches(tapeOf(left, { from: 'B' }))).toEqual([[26]]);
    expect(tapeOf(left, {}).zero).toBe(0);
    expect(tapeOf(left, { from: 'B' }).zero).toBe(tapeOf(left, { from: 'B' }).blank);
  });
  it('a clamp that would sit beyond the blank is given the tube it needs, as scrap, and the zero moves out with it', () => {
    const short = mustBar([[0, 0, 330], ELBOW[1]!, ELBOW[2]!]);
    const needs = 85.725 - (178 - 114.3);
    const tape = tapeOf(short, { mark: 'clamp' });
    expect(tape.grip).toEqual([expect.closeTo(needs, 9), 0]);
    expect(tape.blank).toBeCloseTo(short.developedLength + needs, 9);
    expect(tape.steps[0]!.marks[0]).toMatchObject({ exact: expect.closeTo(0, 9), onBlank: true });
    expect(tapeOf(short, { mark: 'start' }).steps[0]!.marks[0]!.exact).toBeCloseTo(85.725, 9);
  });
  it('grip beyond the last bend is added to the blank as scrap, as far as the allowance does not give it', () => {
    const tail = mustBar([ELBOW[0]!, ELBOW[1]!, [114.3 + 50, 0, 508]], [3, 5]);
    const fromA = tapeOf(tail, {});
    expect(fromA.grip).toEqual([0, expect.closeTo(150 - 55, 9)]);
    expect(fromA.blank).toBeCloseTo(tail.developedLength + 8 + 95, 9);
    // Fed from end B the clamp holds there, and takes less than the grip does.
    expect(tapeOf(tail, { from: 'B' }).grip).toEqual([0, expect.closeTo(85.725 - 55, 9)]);
    const straight = mustBar([ELBOW[0]!, ELBOW[1]!]);
    expect(tapeOf(straight, {})).toMatchObject({ steps: [], grip: [0, 0], blank: 508, rounding: { endMoves: 0 } });
  });
});

describe('from the middle outwards', () => {
  it('a hoop: both halves have the same marks, rotations as they are seen after the flip', () => {
    const hoop = mustBar(HOOP);
    const { steps, zero } = tapeOf(hoop, { from: 'middle', mark: 'clamp' });
    const a = degrees(hoop.bends[1]!.rotation);
    expect(Math.abs(a)).toBeGreaterThan(5);
    expect(steps.map(({ bend, towards, rotationFrom }) => [bend, towards, rotationFrom])).toEqual([
      [3, 'B', null],
      [4, 'B', 3],
      [2, 'A', 3],
      [1, 'A', 2],
    ]);
    [0, -a, 0, a].forEach((rotation, i) => expect(degrees(steps[i]!.rotation)).toBeCloseTo(rotation, 9));
    const at = steps.map(({ marks }) => marks[0]!.at);
    expect(at.slice(2)).toEqual(at.slice(0, 2));
    expect(zero).toBeCloseTo(hoop.developedLength / 2, 9);
  });
  it('a bend in the middle is made first; its start lies on the other side of the zero', () => {
    const peak = mustBar([HOOP[0]!, HOOP[1]!, [0, 0, 1100], HOOP[4]!, HOOP[5]!]);
    const { steps } = tapeOf(peak, { from: 'middle', mark: 'tangents', step: 0.001 });
    expect(steps.map(({ bend, towards }) => `${bend}${towards}`)).toEqual(['2B', '3B', '1A']);
    const [start, end] = steps[0]!.marks;
    expect(start!.exact).toBeCloseTo(-peak.bends[1]!.arc / 2, 9);
    expect(end!.exact).toBeCloseTo(peak.bends[1]!.arc / 2, 9);
    expect(steps[2]!.rotation).toBeCloseTo(-1 * steps[1]!.rotation, 9);
  });
  it('is for symmetric hoops only: not for an S, for halves turned like a screw, or for a leg 1 mm longer', () => {
    const ess: Triple[] = [
      [0, 0, 0],
      [600, 0, 0],
      [600, 600, 0],
      [1200, 600, 0],
    ];
    // Like halves by a half turn about an axis through the middle, not by a mirror.
    const screw: Triple[] = [
      [300, 600, 0],
      [0, 600, 0],
      [0, -600, 0],
      [0, -600, 300],
    ];
    const long: Triple[] = [[-150.3, 640.04, -1], ...HOOP.slice(1)];
    for (const path of [ess, screw, long]) {
      const tube = mustBar(path);
      expect(isSymmetricHoop(tube)).toBe(false);
      expect(tapeList(tube, { from: 'middle', mark: 'start', step: 1 })).toBeNull();
    }
    expect(isSymmetricHoop(mustBar(HOOP))).toBe(true);
    expect(isSymmetricHoop(mustBar(HOOP, [40, 0]))).toBe(true);
  });
});

describe('in any order, with either end in front', () => {
  const ESS: Triple[] = [
    [0, 0, 0],
    [600, 0, 0],
    [600, 600, 0],
    [600, 600, 600],
    [1200, 600, 600],
  ];
  it('the start of a bend is the tangent nearer the end in front, and the clamp lies further towards that end', () => {
    const tube = mustBar(ESS);
    const marks = (front: 'A' | 'B', mark: TapeSetting['mark']) => {
      const order = [2, 1, 3].map((bend) => ({ bend, front }));
      return tapeOf(tube, { order, mark, step: 0.001 }).steps[0]!.marks.map(({ at, bendLies }) => [at, bendLies]);
    };
    // Straights 485.7, 371.4, 371.4, 485.7; arcs 179.542: bend 2 runs from 1036.642 to 1216.184.
    expect(marks('A', 'start')).toEqual([[expect.closeTo(1036.642, 2), 'beyond']]);
    expect(marks('B', 'start')).toEqual([[expect.closeTo(1216.184, 2), 'before']]);
    expect(marks('A', 'clamp')).toEqual([[expect.closeTo(1036.642 - 85.725, 2), 'beyond']]);
    expect(marks('B', 'clamp')).toEqual([[expect.closeTo(1216.184 + 85.725, 2), 'before']]);
    expect(marks('B', 'tangents').map(([at]) => at)).toEqual([
      expect.closeTo(1216.184, 2),
      expect.closeTo(1036.642, 2),
    ]);
    expect(marks('B', 'tangents').map(([, side]) => side)).toEqual(['before', 'beyond']);
  });
  it('a bender whose bends lie before their marks leaves the end that is measured from behind', () => {
    const before = bar(ESS, [0, 0], 'before')!;
    const stood = (from: 'A' | 'B') => {
      const { steps } = tapeOf(before, { from, mark: 'clamp' });
      return steps.map(({ bend, front, towards, marks }) => [bend, front, towards, marks[0]!.bendLies]);
    };
    expect(stood('A')).toEqual([
      [3, 'B', 'B', 'before'],
      [2, 'B', 'B', 'before'],
      [1, 'B', 'B', 'before'],
    ]);
    expect(stood('B').map(([bend, front]) => [bend, front])).toEqual([
      [1, 'A'],
      [2, 'A'],
      [3, 'A'],
    ]);
    // The grip is at the end that stays behind, and the tape hooks over it.
    const tail = bar([[400, 0, 0], ...ESS.slice(1)], [0, 0], 'before')!;
    const tape = tapeOf(tail, { step: 0.001 });
    expect(tape.grip).toEqual([expect.closeTo(150 - 85.7, 9), 0]);
    expect(tape.steps.at(-1)!.marks[0]!.exact).toBeCloseTo(150 + tail.bends[0]!.arc, 9);
  });
  it('a rotation counts from the nearest bend made, over those not made yet', () => {
    const tube = mustBar(ESS);
    // Each bend's plane is turned a quarter from the one before.
    const rotations = (front: 'A' | 'B', bends: readonly number[]) =>
      tapeOf(tube, { order: bends.map((bend) => ({ bend, front })) }).steps.map(({ rotation, rotationFrom }) => [
        Math.round(degrees(rotation)),
        rotationFrom,
      ]);
    expect(rotations('A', [1, 2, 3]).map(([turn]) => turn)).toEqual([0, 90, 90]);
    expect(rotations('B', [3, 2, 1]).map(([turn]) => turn)).toEqual([0, 90, 90]);
    expect(rotations('A', [1, 3, 2])).toEqual([
      [0, null],
      [180, 1],
      [-90, 3],
    ]);
    expect(rotations('B', [2, 1, 3])).toEqual([
      [0, null],
      [90, 2],
      [-90, 2],
    ]);
  });
  it('null for an order that leaves a bend out, or names one twice', () => {
    const tube = mustBar(ESS);
    for (const bends of [
      [1, 2],
      [1, 2, 2],
      [1, 2, 4],
      [1, 2, 3, 4],
    ]) {
      const order = bends.map((bend) => ({ bend, front: 'A' as const }));
      expect(tapeList(tube, { from: 'A', mark: 'start', step: 1, order })).toBeNull();
    }
  });
});

const setting = fc.record<TapeSetting>({
  from: fc.constantFrom('A', 'B', 'middle'),
  mark: fc.constantFrom('start', 'clamp', 'middle', 'tangents'),
  step: fc.constantFrom(SIXTEENTH, THIRTY_SECOND, 1, 0.5),
});
const allowances = fc.tuple(fc.constantFrom(0, 3, 25.4), fc.constantFrom(0, 2));
const anyPath = corners(place, 3, 7);
const leftHalf = corners(
  place.filter(([, y]) => y >= 60),
  2,
  3,
);
const anyHoop = fc
  .tuple(leftHalf, fc.option(place))
  .map(([half, peak]): Triple[] => [
    ...half,
    ...(peak === null ? [] : [[peak[0], 0, peak[2]] as const]),
    ...half.toReversed().map(mirrored),
  ]);
const tubes = (paths: fc.Arbitrary<Triple[]>) =>
  fc.tuple(paths, allowances).map(([path, left]) => {
    const tube = bar(path, left);
    return tube === null || tube.bends.length === 0 ? null : { tube, left };
  });

describe('bent to its marks', () => {
  it('from A, from B and, a hoop, from the middle: the exact marks give the tube that was drawn', () => {
    let hoops = 0;
    fc.assert(
      fc.property(tubes(fc.oneof(anyPath, anyHoop)), setting, (drawn, asked) => {
        fc.pre(drawn !== null);
        const tape = tapeList(drawn.tube, asked);
        fc.pre(tape !== null);
        if (asked.from === 'middle') hoops += 1;
        const bent = bentFrom(drawn.tube, tape, asked, drawn.left, 'exact');
        const there = endFrames(drawn.tube);
        expect(gapBetween(across(bent.A, bent.B), across(there.A, there.B))).toBeLessThan(1e-6);
        expect(gapBetween(across(bent.B, bent.A), across(there.B, there.A))).toBeLessThan(1e-6);
      }),
      fixed(howMany(150, 600)),
    );
    expect(hoops).toBeGreaterThan(howMany(15, 60));
  });
  it('the rounded marks move the far end by what is said', () => {
    let notable = 0;
    fc.assert(
      fc.property(tubes(fc.oneof(anyPath, anyHoop)), setting, (drawn, asked) => {
        fc.pre(drawn !== null);
        const tape = tapeList(drawn.tube, asked);
        fc.pre(tape !== null);
        const bent = bentFrom(drawn.tube, tape, asked, drawn.left, 'at');
        const there = endFrames(drawn.tube);
        const moved =
          asked.from === 'B'
            ? gapBetween(across(bent.B, bent.A), across(there.B, there.A))
            : gapBetween(across(bent.A, bent.B), across(there.A, there.B));
        expect(tape.rounding.endMoves).toBeCloseTo(moved, 6);
        for (const { marks } of tape.steps)
          for (const { at, exact } of marks) expect(Math.abs(at - exact)).toBeLessThanOrEqual(asked.step / 2 + 1e-9);
        if (tape.rounding.isNotable) notable += 1;
      }),
      fixed(howMany(150, 600)),
    );
    expect(notable).toBeGreaterThan(howMany(15, 60));
  });
  it('in any order, from any zero, on either kind of bender: a machine of rigid motions bends it to the same tube', () => {
    let flips = 0;
    let rounded = 0;
    fc.assert(
      fc.property(
        fc.oneof(anyPath, anyHoop),
        allowances,
        setting,
        fc.constantFrom('beyond' as const, 'before' as const),
        fc.option(
          fc.array(fc.tuple(fc.nat(1000), fc.constantFrom('A' as const, 'B' as const)), { minLength: 6, maxLength: 6 }),
        ),
        fc.boolean(),
        (path, left, asked, bendLies, shuffled, exactly) => {
          const tube = bar(path, left, bendLies);
          fc.pre(tube !== null && tube.bends.length > 0 && tube.straights.every((straight) => straight > 5));
          const order = shuffled
            ?.slice(0, tube.bends.length)
            .map(([key, front], i) => ({ bend: i + 1, front, key }))
            .toSorted((a, b) => a.key - b.key)
            .map(({ bend, front }) => ({ bend, front }));
          fc.pre(order === undefined || order.length === tube.bends.length);
          const tape = tapeList(tube, { ...asked, ...(order && { order }) });
          fc.pre(tape !== null);
          const bends = tape.steps.map((step) => bendingOf(tube, tape, step, asked, left, exactly));
          const apart = bends.toSorted((a, b) => a.bend - b.bend);
          fc.pre(apart.every(({ near }, i) => near > (apart[i - 1]?.far ?? 0) + 0.1));
          const bent = bendOnMachine(tube.developedLength, bends);
          const there = endFrames(tube);
          const [held, other] = asked.from === 'B' ? (['B', 'A'] as const) : (['A', 'B'] as const);
          const moved = gapBetween(across(bent[held], bent[other]), across(there[held], there[other]));
          expect(moved).toBeCloseTo(exactly ? 0 : tape.rounding.endMoves, 6);
          if (!exactly && moved > 0.1) rounded += 1;
          if (tape.steps.some(({ front }, i) => i > 0 && front !== tape.steps[i - 1]!.front)) flips += 1;
        },
      ),
      fixed(howMany(250, 800)),
    );
    expect(flips).toBeGreaterThan(howMany(30, 100));
    expect(rounded).toBeGreaterThan(howMany(30, 100));
  });
  it('the elbow: 0.0282 in of mark across a right angle is 1.01 mm, and said; on the 1/16 itself nothing is', () => {
    const elbow = mustBar(ELBOW);
    // The middle at 19.03429 in is marked 19 1/16: 0.02821 in = 0.7165 mm, times the square root of 2.
    expect(tapeOf(elbow, { mark: 'middle' }).rounding.endMoves).toBeCloseTo(1.0133, 3);
    expect(tapeOf(elbow, { mark: 'middle' }).rounding).toMatchObject({ angleOff: 0, isNotable: true });
    expect(tapeOf(elbow, { mark: 'start' }).rounding.endMoves).toBeLessThan(1e-9);
    expect(tapeOf(elbow, { mark: 'start' }).rounding.isNotable).toBe(false);
  });
  it('two tangents on a 1 mm tape: 2 degrees take 3.990 mm, 2.25 take 4.489; both are marked 4, which is 2.0051 degrees', () => {
    const bend = (turn: number) => {
      const t = (turn * Math.PI) / 180;
      // The start lies on a whole millimetre: 114.3 tan(t/2) is taken off the leg.
      const leg = 500 + 114.3 * Math.tan(t / 2);
      return mustBar([
        [0, 0, 0],
        [0, 0, leg],
        [600 * Math.sin(t), 0, leg + 600 * Math.cos(t)],
      ]);
    };
    const off = (turn: number) => degrees(tapeOf(bend(turn), { mark: 'tangents', step: 1 }).rounding.angleOff);
    // 1 mm of arc at 114.3 is 0.50128 degrees.
    expect(off(2)).toBeCloseTo(4 * 0.501276 - 2, 4);
    expect(off(2.25)).toBeCloseTo(2.25 - 4 * 0.501276, 4);
    // Pulled by the scale it comes out all the same; a quarter of a degree more of error is said.
    expect(tapeOf(bend(2.25), { mark: 'tangents', step: 1 }).rounding).toMatchObject({ isNotable: false });
    expect(tapeOf(bend(2.25), { mark: 'tangents', step: 1 }).rounding.endMoves).toBeLessThan(1e-9);
    expect(off(2.256)).toBeGreaterThan(0.25);
    expect(tapeOf(bend(2.256), { mark: 'tangents', step: 1 }).rounding).toMatchObject({ isNotable: true });
  });
});

/** What a person does for a step: from the tape back to the stock. The tube turns against its planes. */
function bendingOf(
  tube: SolvedTube,
  tape: TapeList,
  step: TapeList['steps'][number],
  { from, mark }: TapeSetting,
  left: readonly [number, number],
  exactly: boolean,
) {
  const { radius, angle: net } = tube.bends[step.bend - 1]!;
  const read = step.marks.map((mark) => (exactly ? mark.exact : mark.at));
  const nodeA = left[0] + tape.grip[0];
  const fromNode = (at: number): number =>
    ({
      A: at - nodeA,
      B: tape.blank - at - nodeA,
      middle: tube.developedLength / 2 + (step.towards === 'B' ? at : -at),
    })[from];
  const [one, other] = read.map(fromNode);
  const rearward = step.front === 'A' ? 1 : -1;
  // To the rounded marks it is pulled by the scale.
  const angle = other === undefined || !exactly ? net : ((other - one!) * rearward) / radius;
  const toStart = { start: 0, tangents: 0, clamp: 85.725, middle: (-angle * radius) / 2 }[mark];
  const start = one! + rearward * toStart;
  const end = start + rearward * angle * radius;
  return {
    ...step,
    start,
    angle,
    radius,
    turnAboutX: -1 * step.rotation,
    near: Math.min(start, end),
    far: Math.max(start, end),
  };
}
