import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { derive } from '../../../src/core/derive.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { machineOf, roomOf } from '../../../src/core/rehearse/machine.ts';
import { isBendable } from '../../../src/core/rehearse/bendable.ts';
import { rehearse } from '../../../src/core/rehearse/rehearse.ts';
import { away } from './sampling.ts';
import { bendable, BENDER } from './tubes.ts';

const SHAPE = { bends: [{ rotation: 0, angle: 90 }], straights: [400, 400] };

describe('machineOf', () => {
  it('stands die, clamp, follower and column where the bender has them, on the side it turns to', () => {
    for (const [turns, side] of [
      ['left', 1],
      ['right', -1],
    ] as const) {
      const { die, section } = bendable(SHAPE, { turns });
      const solids = Object.fromEntries(machineOf(die, section).map((solid) => [solid.id.part, solid]));
      const from = (part: string, x: number, y: number, z: number) => away([x, side * y, z], solids[part]!);
      // CLR 152.4, OD 44.45, bend plane at 900, 60 mm for the clamp, 150 for the follower.
      expect(from('die', 0, 152.4, 900)).toBe(0);
      expect(from('die', 0, 22.225, 900)).toBeCloseTo(2, 9);
      expect(from('upper-lip', 152.4 + 7, 152.4, 930)).toBeCloseTo(7, 9);
      expect(from('upper-lip', 0, 10, 922.225)).toBeCloseTo(2, 9);
      expect(from('lower-lip', 0, 10, 877.775)).toBeCloseTo(2, 9);
      expect(from('clamp', 30, -22.225, 900)).toBeCloseTo(2, 9);
      expect(from('clamp', 61, -40, 900)).toBeCloseTo(1, 9);
      expect(from('clamp', -1, -40, 900)).toBeCloseTo(1, 9);
      expect(from('follower', -75, -22.225, 900)).toBeCloseTo(2, 9);
      expect(from('follower', -153, -40, 900)).toBeCloseTo(3, 9);
      expect(from('column', 0, 152.4, 1)).toBe(0);
      expect(from('floor', 0, 0, 900)).toBe(900);
      const turning = Object.values(solids).filter((solid) => solid.turning);
      expect(turning.map(({ id }) => id.part)).toEqual(['die', 'upper-lip', 'lower-lip', 'clamp']);
    }
  });

  it('is empty for a die that nobody has set a bender up for', () => {
    const { die, section } = bendable(SHAPE);
    const { bender: _, ...bare } = die;
    expect(machineOf(bare, section)).toEqual([]);
  });
});

describe('roomOf', () => {
  it('turns boxes about x, then y, then z, and takes any length of normal', () => {
    const room = [
      { name: 'Bench', kind: 'box', centre: [1000, 0, 400], size: [200, 600, 800], rotation: [0, 0, 90] },
      { name: 'Wall', kind: 'plane', point: [0, -1000, 0], normal: [0, 5, 0] },
    ] as const;
    const [bench, wall] = roomOf({ ...BENDER, room });
    // Turned a quarter, it is 600 along x and 200 along y.
    expect(away([1310, 0, 400], bench!)).toBeCloseTo(10, 9);
    expect(away([1000, 130, 400], bench!)).toBeCloseTo(30, 9);
    expect(away([0, -900, 0], wall!)).toBeCloseTo(100, 9);
  });
});

it("every bent tube of the demo has an order that its bender's room leaves free", () => {
  const parsed = parseJob(readFileSync('public/demo.cagewright.json', 'utf8'));
  const frame = parsed.ok ? derive(parsed.job) : null;
  if (!frame?.ok) throw new Error('no demo');
  const bent = frame.value.tubes.filter(isBendable);
  expect(bent.length).toBeGreaterThan(2);
  for (const tube of bent) expect(rehearse(tube).proposed?.length).toBe(tube.bends.length);
});
