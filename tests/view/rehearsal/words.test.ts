import { describe, expect, it } from 'vitest';
import type { Hit, Rehearsal, RehearsedStep } from '../../../src/core/rehearse/types.ts';
import { layStages } from '../../../src/view/rehearsal/rehearsed.ts';
import {
  barredInWords,
  hitInWords,
  momentInWords,
  orderInWords,
  setUpInWords,
  tellMoment,
  troubleAt,
  verdictOf,
} from '../../../src/view/rehearsal/words.ts';
import { layTimeline, momentAt } from '../../../src/view/rehearsal/timeline.ts';
import { bentTube, orderOf } from './bent.ts';

const turn = (degrees: number): number => (degrees * Math.PI) / 180;
const hit = (degrees: number, also: Partial<Hit> = {}): Hit => ({
  angle: turn(degrees),
  solid: 'the floor',
  by: 'front',
  at: [0, 0, 0],
  ...also,
});

describe('a touch', () => {
  it.each<[Hit, string]>([
    [hit(41.99), 'touches the floor at 41°'],
    [hit(41), 'touches the floor at 41°'],
    [hit(0.5, { solid: 'Bench' }), 'touches Bench before it is pulled'],
    [hit(60, { solid: null }), 'touches itself at 60°'],
    [hit(12, { by: 'rear', solid: 'Wall' }), 'the part behind touches Wall at 12°'],
  ])('%#', (touch, words) => {
    expect(hitInWords(touch)).toBe(words);
  });
});

const tube = bentTube();
const free = orderOf(tube, [
  [3, 'B', null],
  [4, 'B', 3],
  [2, 'A', 3],
  [1, 'A', 2],
]);
const steps: readonly RehearsedStep[] = free.map((step, i) => (i === 1 ? { ...step, hit: hit(20) } : step));
const stages = layStages(tube, steps);
const line = layTimeline(steps);

describe('the run of a rehearsal', () => {
  const tell = (place: number): string => tellMoment(stages, momentAt(line, steps, place));

  it('says how each bend is come to, and what is in its way', () => {
    expect(setUpInWords(stages[0]!)).toBe('End B in front.');
    const told = (of: string) =>
      new RegExp(
        `Turn the tube [\\d.]+° (anti)?clockwise, looking from behind \\(end ${of}’s side\\) towards the die`,
        'u',
      );
    expect(setUpInWords(stages[1]!)).toMatch(told('A'));
    expect(setUpInWords(stages[1]!)).toContain('Zero: bend 3 level, its leg to the left, as it comes off the die');
    expect(setUpInWords(stages[2]!)).toMatch(/^Turn the tube end for end, end A in front\. Turn the tube /u);
    expect(setUpInWords(stages[2]!)).toMatch(told('B'));
    expect(stages.map(({ step }) => barredInWords(step))).toEqual([null, 'touches the floor at 20°', null, null]);
  });

  it('tells the touch from where it happens until the bend is let go', () => {
    const { set, bend, release } = line.spans[1]!;
    expect(tell(set)).toMatch(/^Step 2 of 4, bend 4\. Turn the tube /);
    expect(tell(bend + 19)).toMatch(/^Step 2 of 4, bend 4: pull to [\d.]+°\.$/);
    expect(tell(bend + 20)).toBe('Step 2 of 4, bend 4: touches the floor at 20°.');
    expect(tell(release)).toBe('Step 2 of 4, bend 4: touches the floor at 20°.');
    expect(tell(release + 4)).toMatch(/let go, [\d.]+° stands\.$/);
    expect(troubleAt(stages, momentAt(line, steps, bend + 5))).toBeNull();
    expect(momentInWords(stages, momentAt(line, steps, bend + 20))).toMatch(/^20\.0° of [\d.]+°$/);
  });

  it('says of a bend that the machine cannot hold why', () => {
    const cannotHold = { kind: 'too-near', bend: 4, side: 'behind' } as const;
    const barred = steps.map((step) => ({ ...step, hit: null, cannotHold }));
    const held = layStages(tube, barred);
    const words = 'is too near bend 4 behind it for the follower to bear it';
    expect(barredInWords(held[0]!.step)).toBe(words);
    expect(tellMoment(held, momentAt(layTimeline(barred), barred, 10))).toBe(`Step 1 of 4, bend 3: ${words}.`);
  });
});

describe('the verdict', () => {
  const plain = orderOf(tube, [
    [1, 'A', null],
    [2, 'A', 1],
    [3, 'A', 2],
    [4, 'A', 3],
  ]);
  const touching = plain.map((step, i) => (i === 2 ? { ...step, hit: hit(33.4) } : step));
  const rehearsal: Rehearsal = { plain, proposed: plain, reason: null, free: 384, all: 384 };

  it('that the plain order is free', () => {
    expect(verdictOf(rehearsal)).toEqual({
      tone: 'free',
      head: 'Free as it comes: bend after bend, end A in front',
      why: 'Every order keeps free, whichever end is in front.',
    });
  });

  it('that another order has to be taken, and what the plain one touches', () => {
    expect(orderInWords(free)).toBe('3 and 4 with end B in front, then end for end 2 and 1');
    expect(verdictOf({ ...rehearsal, plain: touching, proposed: free, free: 12 })).toEqual({
      tone: 'order',
      head: 'Bend 3 and 4 with end B in front, then end for end 2 and 1',
      why: 'As it comes, bend 3 touches the floor at 33°. 12 of 384 orders keep free, either end in front counted.',
    });
  });

  it('that there is none, and why', () => {
    expect(
      verdictOf({
        ...rehearsal,
        plain: touching,
        proposed: null,
        free: 0,
        reason: { kind: 'never', bend: 2, trouble: plain[1]! },
      }),
    ).toEqual({
      tone: 'none',
      head: 'No order keeps it free',
      why: 'Bend 2 cannot be made in any order: alone, it is free.',
    });
  });

  it('claims nothing of orders that were not searched', () => {
    const unsearched = {
      ...rehearsal,
      proposed: null,
      free: 0,
      all: 0,
      reason: { kind: 'too-many-bends', count: 9 },
    } as const;
    expect(verdictOf(unsearched)).toMatchObject({ tone: 'free', why: 'It has 9 bends; orders are searched up to 8.' });
    expect(verdictOf({ ...unsearched, plain: touching })).toEqual({
      tone: 'none',
      head: 'Not free as it comes',
      why: 'It has 9 bends; orders are searched up to 8.',
    });
    expect(verdictOf({ ...unsearched, plain: [], reason: { kind: 'bends-overlap' } })).toEqual({
      tone: 'none',
      head: 'Cannot be rehearsed',
      why: 'Its bends overlap, so it cannot be made.',
    });
  });
});
