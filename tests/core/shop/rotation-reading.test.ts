import { describe, expect, it } from 'vitest';
import { derive } from '../../../src/core/derive.ts';
import { FIRST_BENDER } from '../../../src/core/job/defaults.ts';
import type { Bender, BendStep } from '../../../src/core/job/types.ts';
import { rotationReading, type RotationReading } from '../../../src/core/shop/rotation-reading.ts';
import { tapeSheet, type TapeStep } from '../../../src/core/shop/tape.ts';
import type { Triple } from '../../laws/frames.ts';
import { jobOf } from '../frame.ts';
import { across, endFrames, gapBetween } from './bent.ts';
import { bendOnMachine } from './machine.ts';

const step = (bend: number, front: 'A' | 'B', degrees: number, rotationFrom: number | null): TapeStep => ({
  bend,
  front,
  towards: 'B',
  angle: 1,
  rotation: (degrees * Math.PI) / 180,
  rotationFrom,
  marks: [],
  angleOff: 0,
});

/** Of a second bend turned by so much from the first. */
const read = (degrees: number, bender: Partial<Bender> = {}, front: 'A' | 'B' = 'A'): RotationReading =>
  rotationReading([step(1, 'A', 0, null), step(2, front, degrees, 1)], 1, { ...FIRST_BENDER, ...bender })!;

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
    expect(read(30, { turns: 'right' }, 'B')).toMatchObject({
      sense: 'clockwise',
      seenFrom: 'A',
      asItLies: false,
      legTo: 'right',
    });
  });
  it('counts from a bend that was not made last: the zero is set on it', () => {
    const steps = [step(2, 'A', 0, null), step(3, 'A', 10, 2), step(1, 'A', 20, 2)];
    expect(rotationReading(steps, 2, FIRST_BENDER)).toMatchObject({ zeroOn: 2, asItLies: false });
    expect(rotationReading(steps, 0, FIRST_BENDER)).toBeNull();
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
    const tube = derivation.value.byId.get('bar')!;
    const bender: Bender = { ...FIRST_BENDER, levelStep: 1e-5 };
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
      const { steps } = tapeSheet(tube, { from: 'A', style: 'start', step: 1, order })!;
      const bends = steps.map((each, i) => {
        const reading = rotationReading(steps, i, bender);
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
