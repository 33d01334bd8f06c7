/** Random tubes on random machines, always the same ones. */
import type { Bender } from '../../../src/core/job/kinds/bender.ts';
import type { Obstacle } from '../../../src/core/job/kinds/obstacle.ts';
import type { BendableTube } from '../../../src/core/rehearse/bendable.ts';
import { bendable, type Shape } from './tubes.ts';

/** Numbers from 0 to 1 by the 32-bit mixer of Tommy Ettinger's mulberry32; same seed, same row. */
export function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

export function drawnShape(draw: () => number, count: number): Shape {
  const between = (low: number, high: number) => low + (high - low) * draw();
  return {
    bends: Array.from({ length: count }, () => ({
      rotation: [0, 180, 90, between(-179, 179)][Math.floor(4 * draw())]!,
      angle: between(15, 118),
    })),
    straights: Array.from({ length: count + 1 }, () => between(70, 520)),
  };
}

/** Curled up nearly in one plane: it comes back to the machine, and to itself. */
export function curledShape(draw: () => number, count: number): Shape {
  const between = (low: number, high: number) => low + (high - low) * draw();
  return {
    bends: Array.from({ length: count }, () => ({ rotation: between(-14, 14), angle: between(70, 118) })),
    straights: Array.from({ length: count + 1 }, () => between(70, 420)),
  };
}

export function drawnBender(draw: () => number): Partial<Bender> {
  const between = (low: number, high: number) => low + (high - low) * draw();
  const room: Obstacle[] = [
    {
      name: 'Bench',
      kind: 'box',
      centre: [between(-1200, 900), between(400, 1200) * (draw() < 0.5 ? -1 : 1), between(300, 900)],
      size: [between(300, 1500), between(200, 500), between(300, 900)],
      rotation: [between(-10, 10), between(-20, 20), between(-90, 90)],
    },
    {
      name: 'Wall',
      kind: 'plane',
      point: [0, between(-1500, -500), 0],
      normal: [between(-0.3, 0.3), 1, between(-0.2, 0.2)],
    },
  ];
  return {
    turns: draw() < 0.5 ? 'left' : 'right',
    bendLies: draw() < 0.5 ? 'beyond' : 'before',
    planeHeight: between(300, 1000),
    room: room.filter(() => draw() < 0.7),
  };
}

/** A tube of so many bends on a machine of its own; every third is pulled past its net angles, every other is curled up. */
export function drawnTube(seed: number, count: number): BendableTube {
  const draw = seeded(seed);
  const pulls = [
    { die: 'd', section: 'main', pulled: 63.2, net: 60, on: '' },
    { die: 'd', section: 'main', pulled: 26.8, net: 25, on: '' },
  ];
  const shape = (seed % 2 === 0 ? drawnShape : curledShape)(draw, count);
  return bendable(shape, drawnBender(draw), {}, seed % 3 === 0 ? { pulls } : {});
}
