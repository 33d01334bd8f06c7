import { describe, expect, it } from 'vitest';
import { faultLine } from '../../../src/core/job/fault.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { drawn } from '../../draws.ts';
import { sampleFile, withValue } from './sample.ts';

type Keys = readonly (string | number)[];

const RUN = {
  tube: 'hoop',
  order: [
    { bend: 1, front: 'A' },
    { bend: 2, front: 'B' },
  ],
  bends: [{ bend: 1, pulled: 63.2, net: 60 }],
  checks: [{ check: 'width', measured: 1200 }],
};
const WALL = { name: 'Wall', kind: 'plane', point: [0, 900, 0], normal: [0, -1, 0] };
const BENCH = { name: 'Bench', kind: 'box', centre: [0, 900, 400], size: [600, 600, 800] };

function file() {
  const withRun = withValue(sampleFile(), ['bent'], [RUN]);
  return withValue(withRun, ['dies', 0, 'bender'], { room: [WALL, BENCH] });
}

const linesOf = (value: unknown): string[] => {
  const parsed = parseJob(JSON.stringify(value));
  return parsed.ok ? [] : parsed.faults.map(faultLine);
};
const linesWith = (keys: Keys, value: unknown): string[] => linesOf(withValue(file(), keys, value));

describe('a bend run in a file', () => {
  it('is taken as it is', () => {
    expect(linesOf(file())).toEqual([]);
  });

  it.each<[Keys, unknown, string]>([
    [['bent', 0, 'tube'], 'gone', 'bent[0].tube: no member "gone"'],
    [
      ['bent', 0, 'tube'],
      "hoop'",
      `bent[0].tube: no member "hoop'": "hoop" is not mirrored, yet its twin has a bend run: take that out first, in the Shop`,
    ],
    [['bent', 1], RUN, 'bent[1].tube: "hoop" is already bent[0]'],
    [['bent', 0, 'order', 1, 'bend'], 1, 'bent[0].order[1].bend: bend 1 is there already'],
    [['bent', 0, 'order', 1, 'bend'], 0, 'bent[0].order[1].bend: bends count from 1'],
    [['bent', 0, 'order', 1, 'bend'], 1.5, 'bent[0].order[1].bend: not a whole number'],
    [['bent', 0, 'order', 1, 'front'], 'C', 'bent[0].order[1].front: not "A" or "B"'],
    [['bent', 0, 'bends', 1], RUN.bends[0], 'bent[0].bends[1].bend: bend 1 is there already'],
    [['bent', 0, 'bends', 0, 'net'], 400, 'bent[0].bends[0].net: beyond 200 degrees'],
    [['bent', 0, 'bends', 0, 'net'], 0, 'bent[0].bends[0].net: below 0.01 degrees'],
    [['bent', 0, 'bends', 0, 'pulled'], '65', 'bent[0].bends[0].pulled: not a number'],
    [['bent', 0, 'bends', 0, 'rotation'], 361, 'bent[0].bends[0].rotation: more than a full turn'],
    [['bent', 0, 'bends', 0, 'straight'], 1e308, 'bent[0].bends[0].straight: beyond 100 m'],
    [['bent', 0, 'checks', 0, 'measured'], null, 'bent[0].checks[0].measured: not a number'],
    [['bent', 0, 'seat'], [{ at: 'C' }], 'bent[0].seat[0].at: not "A" or "middle" or "B"'],
    [['bent', 0, 'seat'], [{ at: 'A' }, { at: 'A', x: 1 }], 'bent[0].seat[1].at: "A" is there already'],
    [['bent', 0, 'seat'], [{ at: 'A', point: 'gone' }], 'bent[0].seat[0].point: no point "gone"'],
    [['bent', 0, 'seat'], [{ at: 'A', point: 'sill-l', z: 0 }], 'bent[0].seat[0].point: not beside a coordinate'],
    [['bent', 0, 'seat'], [{ at: 'A', x: 1e9 }], 'bent[0].seat[0].x: beyond 100 m'],
    [['bent', 0, 'drawn'], { legs: [], angles: [] }, 'bent[0].drawn.rotations: missing'],
  ])('%j set to %j', (keys, value, line) => {
    expect(linesWith(keys, value)).toEqual([line]);
  });

  it('may hold bends that the tube has not, as many as it likes: that is for the run to say', () => {
    const order = Array.from({ length: drawn(10_000, 50_000) }, (_, i) => ({ bend: i + 1, front: 'A' }));
    expect(linesWith(['bent', 0, 'order'], order)).toEqual([]);
    const last = [...order, { bend: 77, front: 'A' }];
    expect(linesWith(['bent', 0, 'order'], last)).toEqual([
      `bent[0].order[${order.length}].bend: bend 77 is there already`,
    ]);
  });
});

describe('a bender in a file', () => {
  it.each<[Keys, unknown, string]>([
    [['turns'], 'up', 'turns: not "left" or "right"'],
    [['bendLies'], 'on', 'bendLies: not "beyond" or "before"'],
    [['planeHeight'], -1, 'planeHeight: below zero'],
    [['planeHeight'], 1e308, 'planeHeight: beyond 100 m'],
    [['levelStep'], 0, 'levelStep: below 0.001 degrees'],
    [['pullStep'], 46, 'pullStep: beyond 45 degrees'],
    [['room', 0, 'normal'], [0, 0, 0], 'room[0].normal: has no length, so no direction'],
    [['room', 1, 'size', 2], 0, 'room[1].size[2]: below 0.01 mm'],
    [['room', 1, 'kind'], 'ball', 'room[1].kind: not "box" or "plane"'],
    [['room', 1, 'name'], 7, 'room[1].name: not text'],
    [['room'], Array.from({ length: 101 }, () => WALL), 'room: more than 100'],
  ])('%j set to %j', (keys, value, line) => {
    expect(linesWith(['dies', 0, 'bender', ...keys], value)).toEqual([`dies[0].bender.${line}`]);
  });
});

it('a log of pulls that no shop can have is refused', () => {
  const pulls = Array.from({ length: 1001 }, () => ({ die: 'd1', section: 'main', pulled: 63.2, net: 60 }));
  expect(linesWith(['pulls'], pulls)).toEqual(['pulls: more than 1000']);
});
