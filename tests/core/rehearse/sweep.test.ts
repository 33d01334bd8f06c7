import { describe, expect, it } from 'vitest';
import { nearestOnPath } from '../../../src/core/geometry/path.ts';
import type { BendStep } from '../../../src/core/job/types.ts';
import { poseAt, type BendableTube } from '../../../src/core/rehearse/pose.ts';
import { pulledAngle } from '../../../src/core/rehearse/rehearse.ts';
import { firstHit } from '../../../src/core/rehearse/sweep.ts';
import type { Hit } from '../../../src/core/rehearse/types.ts';
import { drawnTube, seeded } from './draws.ts';
import { away, clearanceAt, solidsAt } from './sampling.ts';

const TOUCH = 0.1;
/** What the sweep says it leaves open beyond that. */
const OPEN = 0.03;

interface Case {
  readonly tube: BendableTube;
  readonly made: ReadonlySet<number>;
  readonly step: BendStep;
  readonly hit: Hit | null;
}

const CASES: readonly Case[] = Array.from({ length: 400 }, (_, seed) => {
  const draw = seeded(1000 + seed);
  const count = 2 + (seed % 5);
  const tube = drawnTube(seed, count);
  const bend = 1 + Math.floor(count * draw());
  const made = new Set(Array.from({ length: count }, (__, i) => i + 1).filter((each) => each !== bend && draw() < 0.8));
  const step = { bend, front: draw() < 0.5 ? 'A' : 'B' } as const;
  return { tube, made, step, hit: firstHit(tube, made, step, pulledAngle(tube, bend)) };
});

describe('the sweep of one bend', () => {
  it('is tried on tubes that touch at once, on the way and never, with all parts of machine and room', () => {
    const touched = new Set(CASES.map(({ hit }) => (hit === null ? 'nothing' : (hit.solid ?? 'itself'))));
    expect([...touched].toSorted()).toEqual(
      expect.arrayContaining(['Bench', 'Wall', 'itself', 'nothing', 'the floor', 'the die']),
    );
    const later = CASES.filter(({ hit }) => hit !== null && hit.angle > 0.05);
    expect(later.length).toBeGreaterThan(40);
    expect(CASES.filter(({ hit }) => hit === null).length).toBeGreaterThan(40);
  });

  it('touches nothing before its first touch, by sampling', () => {
    const STEPS = 24;
    for (const { tube, made, step, hit } of CASES) {
      const until = hit === null ? pulledAngle(tube, step.bend) : hit.angle * (1 - 1e-9);
      if (hit?.angle === 0) continue;
      for (let i = 0; i <= STEPS; i++) {
        const clear = clearanceAt(tube, made, step, (until * i) / STEPS, 9);
        expect(clear).toBeGreaterThan(TOUCH);
      }
    }
  });

  it('touches there and then, at the place it tells', () => {
    for (const { tube, made, step, hit } of CASES) {
      if (hit === null) continue;
      const { front, arc, rear } = poseAt(tube, made, step, hit.angle);
      const own = hit.by === 'front' ? front : rear;
      expect(nearestOnPath(own, hit.at).distance).toBeLessThan(0.006);
      const radius = tube.section.outerDiameter / 2;
      if (hit.solid === null) {
        const others = [hit.by === 'front' ? rear : front, ...(arc === null ? [] : [arc])];
        const gap = Math.min(...others.map((path) => nearestOnPath(path, hit.at).distance)) - 2 * radius;
        expect(gap).toBeLessThan(TOUCH + OPEN);
      } else {
        const solid = solidsAt(tube, hit.angle).find(({ name }) => name === hit.solid)!;
        expect(away(hit.at, solid) - radius).toBeLessThan(TOUCH + OPEN);
      }
    }
  });
});
