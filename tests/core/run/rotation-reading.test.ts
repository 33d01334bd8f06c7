import { describe, expect, it } from 'vitest';
import { derive } from '../../../src/core/derive.ts';
import { FIRST_BENDER } from '../../../src/core/job/kinds/bender.ts';
import type { Bender } from '../../../src/core/job/kinds/bender.ts';
import type { BendStep } from '../../../src/core/job/kinds/bent.ts';
import { rotationReading } from '../../../src/core/run/rotation-reading.ts';
import { tapeList } from '../../../src/core/marks/tape.ts';
import type { Triple } from '../../laws/frames.ts';
import { jobOf } from '../frame.ts';
import { bendable } from '../rehearse/tubes.ts';
import { across, endFrames, gapBetween } from './bent.ts';
import { bendOnMachine } from './machine.ts';

const STRAIGHTS = [500, 400, 400, 600];

/** Of a second bend turned by so much from the first, which is of 39 degrees. */
const read = (degrees: number, bender: Partial<Bender> = {}, order: readonly BendStep[] = [at(1, 'A'), at(2, 'A')]) => {
  const bends = [
    { rotation: 0, angle: 39 },
    { rotation: degrees, angle: 50 },
  ];
  const tube = bendable({ bends, straights: [500, 400, 600] }, { ...FIRST_BENDER, ...bender });
  return rotationReading(tube, order, order.length - 1)!;
};
const at = (bend: number, front: 'A' | 'B'): BendStep => ({ bend, front });

describe('a rotation on the machine', () => {
  it('is rounded to what the level or the wheel shows, and says what that leaves', () => {
    expect(read(34.26)).toMatchObject({ by: 'level', turn: 34.3, reads: 34.3, off: expect.closeTo(-0.04, 9) });
    expect(read(34.26, { rotationBy: 'wheel' })).toMatchObject({ by: 'wheel', turn: 34, reads: 34 });
    expect(read(34.26, { rotationBy: 'wheel', wheelStep: 0.5 })).toMatchObject({ turn: 34.5, reads: 34.5 });
    expect(read(-0.03)).toMatchObject({ turn: 0, sense: null });
  });
  it('a level reads 0 to 90 and the same again past plumb; a wheel goes on to 180', () => {
    expect(read(120)).toMatchObject({ turn: 120, reads: 60, pastPlumb: true });
    expect(read(90)).toMatchObject({ reads: 90, pastPlumb: false });
    expect(read(180)).toMatchObject({ turn: 180, reads: 0, pastPlumb: true, sense: null });
    expect(read(120, { rotationBy: 'wheel' })).toMatchObject({ turn: 120, reads: 120, pastPlumb: false });
    expect(read(179.8, { rotationBy: 'wheel', wheelStep: 7 })).toMatchObject({ turn: 180 });
  });
  it('plus is clockwise from the end behind; after a flip the other end is behind, and the zero is set anew', () => {
    expect(read(30)).toMatchObject({ sense: 'clockwise', seenFrom: 'B', zeroOn: 1, asItLies: true, legTo: 'left' });
    expect(read(-30)).toMatchObject({ sense: 'anticlockwise', seenFrom: 'B' });
    // Past the bend that is made, with the other end in front: the axis turns about, and so does the order.
    expect(read(30, { turns: 'right' }, [at(1, 'A'), at(2, 'B')])).toMatchObject({
      sense: 'anticlockwise',
      seenFrom: 'A',
      asItLies: false,
      legTo: 'right',
    });
    expect(read(30, {}, [at(2, 'B'), at(1, 'B')])).toMatchObject({ sense: 'clockwise', seenFrom: 'A', asItLies: true });
  });
  it('counts from a bend that was not made last: the zero is set on it', () => {
    const bends = [0, 10, 20].map((rotation) => ({ rotation, angle: 40 }));
    const tube = bendable({ bends, straights: STRAIGHTS });
    const order = [at(2, 'A'), at(3, 'A'), at(1, 'A')];
    expect(rotationReading(tube, order, 2)).toMatchObject({ zeroOn: 2, asItLies: false });
    expect(rotationReading(tube, order, 0)).toBeNull();
  });
  it('says what a level on the leg reads, which a bar across the tube does not', () => {
    // asin(sin 39 x sin 30) by hand: 0.62932 x 0.5 = 0.31466, 18.34 degrees.
    expect(read(30).alongLeg).toBe(18.3);
    expect(read(150).alongLeg).toBe(18.3);
    expect(read(180).alongLeg).toBe(0);
  });
  it('sits behind the die, in front of the clamp where that is too short, or nowhere', () => {
    const short = (last: number, between: number) => {
      const bends = [0, 30].map((rotation) => ({ rotation, angle: 20 }));
      const tube = bendable({ bends, straights: [500, between, last] });
      // Bend 2 with end B in front, past bend 1: behind the die lies what is between them.
      return rotationReading(tube, [at(1, 'A'), at(2, 'B')], 1)!.sits;
    };
    // What the follower holds is 150; the arc of 20 degrees is 53.2.
    expect(short(400, 140)).toEqual({ where: 'behind', before: 1 });
    expect(short(400, 130)).toEqual({ where: 'in-front', before: null });
    expect(short(90, 130)).toBeNull();
  });
  it('a leg shorter than a level is not read', () => {
    const bends = [0, 30].map((rotation) => ({ rotation, angle: 60 }));
    const leg = (mm: number) =>
      rotationReading(bendable({ bends, straights: [mm, 400, 500] }), [at(1, 'A'), at(2, 'A')], 1)!.alongLeg;
    expect(leg(101)).not.toBeNull();
    expect(leg(99)).toBeNull();
  });
  it('turned as it is read, in three orders, the tube comes out as it was drawn', () => {
    // Right angles in turned planes; rotations that both instruments can show, past plumb too.
    const path: Triple[] = [
      [0, 0, 0],
      [700, 0, 0],
      [700, 700, 0],
      [700 - 606.21778, 700, 350],
      [700 - 606.21778 + 350, 1400, 350 + 606.21778],
    ];
    const nodes = Object.fromEntries(path.map((each, i) => [`n${i}`, each]));
    const derivation = derive(jobOf({ nodes, members: [{ id: 'bar', path: Object.keys(nodes) }] }));
    if (!derivation.ok) throw new Error('derives');
    const drawn = derivation.value.byId.get('bar')!;
    const tube = { ...drawn, die: { ...drawn.die!, bender: { ...FIRST_BENDER, levelStep: 1e-5 } } };
    const orders: BendStep[][] = [
      [1, 2, 3].map((bend) => ({ bend, front: 'A' })),
      [3, 1, 2].map((bend) => ({ bend, front: 'B' })),
      [
        { bend: 2, front: 'A' },
        { bend: 3, front: 'A' },
        { bend: 1, front: 'B' },
      ],
    ];
    const senses = new Set<string>();
    for (const order of orders) {
      const { steps } = tapeList(tube, { from: 'A', mark: 'start', step: 1, order })!;
      const bends = steps.map((each, i) => {
        const reading = rotationReading(tube, steps, i);
        if (reading !== null) senses.add(`${reading.sense} ${reading.pastPlumb}`);
        const turned = reading === null ? 0 : reading.pastPlumb ? 180 - reading.reads : reading.reads;
        // Looking from behind, along -x at the machine, clockwise is right-hand about -x.
        const sense = reading?.sense === 'clockwise' ? -1 : 1;
        const bend = tube.bends[each.bend - 1]!;
        return {
          ...each,
          start: each.front === 'A' ? bend.start : bend.end,
          angle: bend.angle,
          radius: bend.radius,
          turnAboutX: (sense * turned * Math.PI) / 180,
        };
      });
      const [bent, there] = [bendOnMachine(tube.developedLength, bends), endFrames(tube)];
      expect(gapBetween(across(bent.A, bent.B), across(there.A, there.B))).toBeLessThan(0.001);
    }
    expect(senses.size).toBeGreaterThan(2);
  });
});
