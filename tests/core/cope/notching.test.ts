/**
 * Recipes for a notcher, followed to the letter on a machine of numbers: a tube is clamped with its cut end free, turned until its mark faces the
 * drill, the head swung to the angle that is set, the saw's centre laid off from the sawn end, and the saw fed for its depth. What is left
 * of each line along the tube must be what the profile says (the machine's geometry is written out here, from none of the code's).
 */
import { describe, expect, it } from 'vitest';
import { deepSide } from '../../../src/core/cope/end-mark.ts';
import { fitGap } from '../../../src/core/cope/fit-gap.ts';
import { notchingOf, sleevesMade, type Notch } from '../../../src/core/cope/notching.ts';
import type { Notcher } from '../../../src/core/job/kinds/notcher.ts';
import type { Saw } from '../../../src/core/job/kinds/saw.ts';
import type { Job } from '../../../src/core/job/types.ts';
import type { SolvedTube } from '../../../src/core/solve/types.ts';
import { drawn } from '../../draws.ts';
import { copedTo, fixed, frameOf, jobOf, member, SQUARE, tubing } from '../../reference/jobs.ts';
import { straightJoint } from '../../reference/joints.ts';
import { drawFrom } from '../../reference/oracles/seeded.ts';

const DEGREE = Math.PI / 180;

/** mm squared. A line that equal tubes only touch at is met or not by rounding alone. */
const TOUCHES = 1e-9;

/** What a person has in hand at the machine, all of it from the recipe. */
interface Pass {
  readonly set: number;
  readonly saw: number;
  readonly centre: number;
  /** Of the mark, clockwise as one looks at the cut end; what turns to the drill. */
  readonly mark: number;
  /** How far this tube's axis passes on the right of the saw's, looking at the cut end with the mark up. */
  readonly right: number;
  readonly leans: 'over-tube' | 'past-end';
}

/**
 * Machine axes: x along the tube from its sawn end, y towards the drill, z = x cross y. The drill leans back over the tube (towards +x) or out past its
 * end; the mark then faces the drill, or away from it. Where a line of the tube last leaves the swept round of the saw, mm from the sawn
 * end; null where it never meets it.
 */
function leftOf(pass: Pass, radius: number, phi: number): { readonly x: number; readonly along: number } | null {
  const towardsDrill = pass.leans === 'over-tube' ? 1 : -1;
  // Looking along the tube with the mark up, the tube's axis on the right of the saw's by `right`: the saw's is on its left.
  const turned = phi - pass.mark;
  const [y, z] = [towardsDrill * radius * Math.cos(turned), towardsDrill * radius * Math.sin(turned)];
  const saw = { y: 0, z: -towardsDrill * pass.right };
  const axis = { x: towardsDrill * Math.sin(pass.set), y: Math.cos(pass.set) };
  // |q - (q . axis) axis|^2 = (saw / 2)^2 with q = (x - centre, y, z) - the saw's place.
  const dz = z - saw.z;
  const rest = (pass.saw / 2) ** 2 - dz * dz;
  if (rest < -TOUCHES) return null;
  // Across the saw's axis, in the plane of swing: (x - centre) axis.y - y axis.x = sqrt(rest).
  const x = pass.centre + (Math.sqrt(Math.max(rest, 0)) + y * axis.x) / axis.y;
  return { x, along: (x - pass.centre) * axis.x + y * axis.y };
}

const passOf = (tube: SolvedTube, { cut, sawn }: Notch, leans: Pass['leans']): Pass => ({
  set: sawn!.set,
  saw: sawn!.saw,
  centre: sawn!.centre,
  mark: deepSide(tube, cut).turn,
  right: cut.axisOffset,
  leans,
});

/** Any angle, any offset, and saws of every size that a joint asks for, as long as they need be. */
const ABLE: Notcher = { name: 'Able', greatestOffSquare: 90, takesOffset: true, leans: 'either' };
const sawsFor = (job: Job): Saw[] =>
  job.sections.map(({ outerDiameter }) => ({ diameter: outerDiameter, reach: 1000 }));

/** The joint's branch with something left on, made one for each side when `mirror`. */
function branchOf(seed: number, mirror: boolean): SolvedTube {
  const { job, which } = straightJoint(seed);
  const allowance = drawFrom(seed + 7).between(0, 12);
  const members = job.members.map((one) => {
    const ends = one.id === 'branch' ? one.ends.map((end, i) => (i === which ? { ...end, allowance } : end)) : one.ends;
    return { ...one, mirror, ends: ends as unknown as typeof one.ends };
  });
  return frameOf({ ...job, members }).byId.get(mirror ? "branch'" : 'branch')!;
}

describe('a recipe followed to the letter', () => {
  it.each([false, true])(
    'takes away what the profile says, on random ends with one to four cuts; twins: %s',
    (mirror) => {
      let sawn = 0;
      for (let seed = 1; seed <= drawn(50, 300); seed++) {
        const tube = branchOf(seed, mirror);
        const end = tube.ends[seed % 2]!;
        const { notches, gap } = notchingOf(end, { notchers: [ABLE], saws: sawsFor({ ...straightJoint(seed).job }) })!;
        if (notches.some(({ sawn: by }) => by === null)) continue;
        sawn++;
        expect(gap).toBe(0);
        for (const leans of ['over-tube', 'past-end'] as const) {
          const passes = notches.map((notch) => passOf(tube, notch, leans));
          end.outer.forEach((s, degree) => {
            const left = passes.flatMap((pass) => leftOf(pass, tube.section.outerDiameter / 2, degree * DEGREE) ?? []);
            const asked = s - (end.tip! - end.allowance);
            if (Number.isNaN(s)) expect(left, `seed ${seed}, ${degree} degrees`).toEqual([]);
            else if (left.length > 0) expect(Math.max(...left.map(({ x }) => x)), `seed ${seed}`).toBeCloseTo(asked, 5);
            else expect.fail(`seed ${seed}: no saw reaches the line at ${degree} degrees`);
          });
        }
      }
      expect(sawn).toBeGreaterThan(drawn(15, 100));
    },
  );

  it('is deep enough: between touch and through lie all places of the wall that the saw meets, and nothing more', () => {
    let [measured, touches] = [0, 0];
    for (let seed = 1; seed <= drawn(8, 300); seed++) {
      const tube = branchOf(seed, false);
      const end = tube.ends[seed % 2]!;
      const { outerDiameter, wall } = tube.section;
      const { notches } = notchingOf(end, { notchers: [ABLE], saws: sawsFor({ ...straightJoint(seed).job }) })!;
      for (const notch of notches) {
        if (notch.sawn === null) continue;
        const pass = passOf(tube, notch, 'over-tube');
        // All of the wall on the saw's round, looked at place by place: psi round the saw, t along its axis.
        let [touch, through] = [-Infinity, Infinity];
        for (let psi = 0; psi < 360; psi += 0.25) {
          const w = (pass.saw / 2) * Math.cos(psi * DEGREE);
          const z = (pass.saw / 2) * Math.sin(psi * DEGREE) - pass.right;
          for (let t = -130; t <= 130; t += 0.25) {
            const x = pass.centre + t * Math.sin(pass.set) - w * Math.cos(pass.set);
            const across = Math.hypot(t * Math.cos(pass.set) + w * Math.sin(pass.set), z);
            if (x < 0 || across > outerDiameter / 2 || across < outerDiameter / 2 - wall) continue;
            [touch, through] = [Math.max(touch, t), Math.min(through, t)];
          }
        }
        measured++;
        // Where the axes meet, nothing is touched before the place on the mark that is said.
        if (notch.sawn.touch !== null) {
          const along =
            (notch.sawn.touch - pass.centre) * Math.sin(pass.set) + (outerDiameter / 2) * Math.cos(pass.set);
          expect(along, `seed ${seed}`).toBeGreaterThan(touch - 1e-6);
          expect(along, `seed ${seed}`).toBeLessThan(touch + 0.75);
          touches++;
        }
        const seen = touch - through;
        expect(notch.sawn.depth, `seed ${seed}`).toBeGreaterThan(seen - 1e-6);
        // A quarter of a millimetre of either end, and what the next line of the saw holds, are between the places.
        expect(notch.sawn.depth, `seed ${seed}`).toBeLessThan(seen + 1.5);
      }
    }
    expect(measured).toBeGreaterThan(5);
    expect(touches).toBeGreaterThan(2);
  });
});

/** A branch of `size` that meets a run of `run` mm at so many degrees. */
function joint(included: number, size = 40, run = 45, allowance = 0): SolvedTube {
  const to = [Math.cos(included * DEGREE) * 500, Math.sin(included * DEGREE) * 500, 0] as const;
  const job = jobOf({
    sections: [tubing('run', run, 2), tubing('s', size, 2)],
    nodes: [fixed('a', [-300, 0, 0]), fixed('b', [300, 0, 0]), fixed('n', [0, 0, 0]), fixed('f', to)],
    members: [
      member('run', ['a', 'b'], 'run'),
      member('branch', ['n', 'f'], 's', { ends: [{ ...copedTo('run'), allowance }, SQUARE] }),
    ],
  });
  return frameOf(job).byId.get('branch')!;
}

const BENCH: Notcher = { name: 'Bench', greatestOffSquare: 50, takesOffset: false, step: 1, leans: 'over-tube' };
const wayOf = (tube: SolvedTube, notchers: readonly Notcher[], saws: readonly Saw[]) => {
  const { notches, gap } = notchingOf(tube.ends[0], { notchers, saws })!;
  const [{ way, why, sawn }] = notches as [Notch];
  return { way, why, set: sawn === null ? null : sawn.set / DEGREE, gap };
};

describe('what the machine allows', () => {
  it('is general where nobody has said what there is: any angle, the depth for the person to compare', () => {
    const [end] = joint(60).ends;
    const { notches, leans, notcher } = notchingOf(end, undefined)!;
    expect([leans, notcher]).toEqual(['unsaid', null]);
    expect(notches[0]).toMatchObject({
      way: 'either',
      sawn: { saw: 45, reach: null, centre: expect.closeTo(-end.tip!, 9) },
    });
    expect(notchingOf(joint(60).ends[1], undefined)).toBeNull();
  });

  it('no setting that it has not: beyond the swing, at 30 degrees and less, and with no such saw, the wrap', () => {
    const saw = [{ diameter: 45, reach: 200 }];
    expect(wayOf(joint(35), [BENCH], saw)).toEqual({ way: 'wrap', why: 'swing', set: null, gap: 0 });
    expect(wayOf(joint(30), [ABLE], saw)).toEqual({ way: 'wrap', why: 'thin', set: null, gap: 0 });
    expect(wayOf(joint(60), [BENCH], [{ diameter: 60 }])).toEqual({ way: 'wrap', why: 'saw', set: null, gap: 0 });
    expect(wayOf(joint(50), [BENCH], saw)).toMatchObject({ way: 'one-pass', set: expect.closeTo(40, 9) });
  });

  it('one pass as deep as the saw cuts; over that half from each side if the head leans both ways or stands square; else the wrap', () => {
    const saw = (reach: number) => [{ diameter: 45, reach }];
    const tube = joint(60);
    const { depth } = notchingOf(tube.ends[0], { notchers: [BENCH], saws: saw(500) })!.notches[0]!.sawn!;
    expect(wayOf(tube, [BENCH], saw(depth + 0.1)).way).toBe('one-pass');
    expect(wayOf(tube, [BENCH], saw(depth - 0.1))).toMatchObject({ way: 'wrap', why: 'reach' });
    expect(wayOf(tube, [{ ...BENCH, leans: 'either' }], saw(depth - 0.1)).way).toBe('flip');
    expect(wayOf(joint(90), [BENCH], saw(21)).way).toBe('flip');
    expect(wayOf(joint(90), [BENCH], saw(19))).toMatchObject({ way: 'wrap', why: 'reach' });
  });

  it('what is left on may be too much for one pass: it is sawn off first', () => {
    const { depth } = notchingOf(joint(60).ends[0], { notchers: [BENCH], saws: [{ diameter: 45, reach: 500 }] })!
      .notches[0]!.sawn!;
    const long = notchingOf(joint(60, 40, 45, 30).ends[0], {
      notchers: [BENCH],
      saws: [{ diameter: 45, reach: depth + 1 }],
    })!.notches[0]!;
    const off = notchingOf(joint(60).ends[0], { notchers: [BENCH], saws: [{ diameter: 45, reach: depth + 1 }] })!;
    // Its figures are those of the end as it is then.
    expect(long).toMatchObject({ way: 'cut-off-first', sawn: off.notches[0]!.sawn! });
  });

  it('a head of which nobody has said how it leans may lean both ways', () => {
    const { leans: _leans, ...unsaid } = BENCH;
    const { depth } = notchingOf(joint(60).ends[0], { notchers: [BENCH], saws: [{ diameter: 45, reach: 500 }] })!
      .notches[0]!.sawn!;
    expect(wayOf(joint(60), [unsaid], [{ diameter: 45, reach: depth - 1 }]).way).toBe('flip');
  });

  it('of two machines the one that does it, of two saws the nearer', () => {
    const { notcher, notches } = notchingOf(joint(35).ends[0], {
      notchers: [BENCH, ABLE],
      saws: [{ diameter: 46 }, { diameter: 45, reach: 300 }, { diameter: 44 }],
    })!;
    expect(notcher).toBe(ABLE);
    expect(notches[0]!.sawn!.saw).toBe(45);
  });
});

describe('a round setting', () => {
  it('leaves the gap that sampling finds: on both profiles, at every hundredth of a degree', () => {
    let good = 0;
    for (const [included, step] of [
      [48.5, 1],
      [61.7, 0.5],
      [77.4, 5],
      [82.6, 5],
    ] as const) {
      const tube = joint(included);
      const notcher = { ...BENCH, step };
      const saws = [{ diameter: 45, reach: 200 }];
      const { way, why, gap } = wayOf(tube, [notcher], saws);
      const set = Math.round((90 - included) / step) * step;
      // s(phi) of trade.md with both angles, the axes meeting at the node.
      const trim = (phi: number, off: number): number =>
        (20 * Math.cos(phi) * Math.sin(off) + Math.sqrt(22.5 ** 2 - (20 * Math.sin(phi)) ** 2)) / Math.cos(off);
      let [least, most] = [Infinity, -Infinity];
      for (let k = 0; k < 36_000; k++) {
        const phi = (k / 100) * DEGREE;
        const off = trim(phi, set * DEGREE) - trim(phi, (90 - included) * DEGREE);
        [least, most] = [Math.min(least, off), Math.max(most, off)];
      }
      // Over 1 mm it is no setting, and the wrap is used.
      if (most - least > 1) expect([way, why, gap]).toEqual(['wrap', 'gap', 0]);
      else {
        expect(way).toBe('one-pass');
        expect(gap).toBeCloseTo(most - least, 6);
        good++;
      }
    }
    expect(good).toBe(2);
  });

  it('is the exact one on a machine without a scale, and leaves nothing', () => {
    const { step: _step, ...anyAngle } = BENCH;
    expect(wayOf(joint(48.5), [anyAngle], [{ diameter: 45, reach: 200 }])).toMatchObject({ gap: 0 });
  });

  it('a saw a little larger leaves a gap that is said; one that leaves the joint open is no saw for it', () => {
    const { way, gap } = wayOf(joint(60, 40, 45), [BENCH], [{ diameter: 45.6, reach: 200 }]);
    expect(way).toBe('one-pass');
    expect(gap).toBeGreaterThan(0.01);
    const tube = joint(60, 45, 45);
    expect(wayOf(tube, [BENCH], [{ diameter: 44.6, reach: 200 }])).toMatchObject({ way: 'wrap', why: 'saw' });
    const { notches } = notchingOf(tube.ends[0], undefined)!;
    const small = { ...notches[0]!, sawn: { ...notches[0]!.sawn!, saw: 44.6 } };
    expect(fitGap(tube.ends[0], sleevesMade(tube.ends[0], [small]))).toBeNull();
  });
});
