import { describe, expect, it } from 'vitest';
import type { RehearsedStep } from '../../../src/core/rehearse/types.ts';
import { createPlayer } from '../../../src/view/rehearsal/player.ts';
import { layTimeline, momentAt, stopAfter, stopBefore } from '../../../src/view/rehearsal/timeline.ts';
import { degrees } from '../../core/frame.ts';

const step = (bend: number, pulled: number, hitAt: number | null = null): RehearsedStep => ({
  bend,
  front: 'A',
  pullTo: (pulled * Math.PI) / 180,
  pulled: (pulled * Math.PI) / 180,
  net: ((pulled - 2) * Math.PI) / 180,
  rotation: 0,
  rotationFrom: bend === 1 ? null : bend - 1,
  hit: hitAt === null ? null : { angle: (hitAt * Math.PI) / 180, solid: { part: 'floor' }, by: 'front', at: [0, 0, 0] },
  cannotHold: null,
});
const STEPS = [step(1, 60), step(2, 78.3, 41.5)];
const line = layTimeline(STEPS);
const at = (place: number) => momentAt(line, STEPS, place);

describe('the strip of a rehearsal', () => {
  it('is a degree a place within a bend, and ends at what is pulled', () => {
    const { bend, release } = line.spans[1]!;
    for (const turned of [0, 1, 40, 78]) expect(degrees(at(bend + turned).angle)).toBeCloseTo(turned, 9);
    expect(release - bend, 'a whole number of places, so that every key press lands').toBe(79);
    expect(degrees(at(release).angle)).toBeCloseTo(78.3, 9);
    expect(line.spans[0]!.release, '60 degrees are 60 places').toBe(60);
  });

  it('goes from step to step without a gap, and lets go from the pull to what stands', () => {
    let before = -1;
    for (let place = 0; place <= line.length; place += 0.25) {
      const { step: now, way } = at(place);
      expect(now).toBeGreaterThanOrEqual(before < 0 ? 0 : before);
      expect(way).toBeGreaterThanOrEqual(0);
      expect(way).toBeLessThanOrEqual(1);
      before = now;
    }
    expect(at(line.length)).toMatchObject({ step: 1, phase: 'release' });
    expect(degrees(at(line.length).angle)).toBeCloseTo(76.3, 9);
    expect(at(line.spans[1]!.set)).toMatchObject({ step: 1, phase: 'set', way: 0, angle: 0 });
    expect(at(line.spans[1]!.bend)).toMatchObject({ step: 1, phase: 'bend', way: 1, angle: 0 });
  });

  it('meets a bend that cannot be held where it would begin', () => {
    const barred = [
      step(1, 60),
      { ...step(2, 40), cannotHold: { kind: 'too-near', bend: 1, side: 'in-front' } as const },
    ];
    const { hits, spans, stops } = layTimeline(barred);
    expect(hits).toEqual([spans[1]!.bend]);
    expect(new Set(stops).size).toBe(stops.length);
  });

  it('takes places beyond its ends as its ends', () => {
    expect(at(-5)).toEqual(at(0));
    expect(at(1e6)).toEqual(at(line.length));
  });

  it('stops at ready, touched, pulled and the end, back and forth', () => {
    const forth: number[] = [0];
    for (let next = stopAfter(line, 0); next !== null; next = stopAfter(line, next)) forth.push(next);
    const { bend, release } = line.spans[1]!;
    expect(forth).toEqual([0, 60, bend, bend + 41.5, release, line.length].map((place) => expect.closeTo(place, 9)));
    const back: number[] = [line.length];
    for (let next = stopBefore(line, line.length); next !== null; next = stopBefore(line, next)) back.push(next);
    expect(back.toReversed()).toEqual(forth);
  });
});

describe('the player', () => {
  /** Plays in frames of so many seconds until it stops by itself. */
  function playOut(player: ReturnType<typeof createPlayer>, frame: number): number {
    let frames = 0;
    player.play();
    while (player.isPlaying()) {
      player.advance(frame);
      frames += 1;
      expect(frames).toBeLessThan(10_000);
    }
    return frames;
  }

  it('stops where something is touched, goes on from there to the end, and from the end anew', () => {
    const player = createPlayer(line);
    playOut(player, 1 / 60);
    expect(player.place()).toBeCloseTo(line.spans[1]!.bend + 41.5, 9);
    playOut(player, 1 / 60);
    expect(player.place()).toBe(line.length);
    player.play();
    expect(player.place()).toBe(0);
  });

  it('draws frames only while it plays, and reports every change once', () => {
    const player = createPlayer(line);
    let calls = 0;
    const stop = player.listen(() => (calls += 1));
    expect(player.advance(1)).toBe(false);
    expect(calls).toBe(0);
    player.set(30);
    player.forward();
    expect(player.place()).toBe(60);
    player.back();
    expect(player.place()).toBe(0);
    expect(calls).toBe(3);
    player.play();
    expect(player.advance(0.01)).toBe(true);
    player.pause();
    expect(player.advance(0.01)).toBe(false);
    stop();
    player.set(5);
    expect(calls).toBe(6);
  });

  it('does not jump over a bend when the first frame comes late', () => {
    const player = createPlayer(line);
    player.play();
    player.advance(30);
    expect(player.place()).toBeLessThan(10);
  });
});
