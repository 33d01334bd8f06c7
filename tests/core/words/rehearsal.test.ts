/** What a rehearsal says, of tubes and touches laid by hand. */
import { describe, expect, it } from 'vitest';
import type { Hit, Rehearsal, RehearsedStep, RoomThing } from '../../../src/core/rehearse/types.ts';
import {
  barredInWords,
  hitInWords,
  orderInWords,
  searchInWords,
  setUpInWords,
} from '../../../src/core/words/rehearsal.ts';
import { layStages } from '../../../src/view/rehearsal/rehearsed.ts';
import { bentTube, orderOf } from '../../view/rehearsal/bent.ts';

const turn = (degrees: number): number => (degrees * Math.PI) / 180;
const hit = (degrees: number, also: Partial<Hit> = {}): Hit => ({
  angle: turn(degrees),
  solid: { part: 'floor' },
  by: 'front',
  at: [0, 0, 0],
  ...also,
});

const thing = (name: string, kind: RoomThing['kind']): RoomThing => ({ part: 'room', kind, name });

describe('a touch', () => {
  it.each<[Hit, string]>([
    [hit(41.99), 'swings into the floor at 41°'],
    [hit(41), 'swings into the floor at 41°'],
    [hit(0.5, { solid: thing('Bench', 'box') }), 'touches Bench before the machine is turned'],
    [hit(60, { solid: null }), 'swings into the tube itself at 60°'],
    [hit(12, { by: 'rear', solid: thing('Wall', 'plane') }), 'draws the tube behind it into Wall at 12°'],
    [hit(12, { solid: thing('', 'plane') }), 'swings into a wall at 12°'],
    [hit(12, { solid: thing('', 'box') }), 'swings into a box at 12°'],
    [hit(12, { solid: { part: 'upper-lip' } }), "swings into the die's upper lip at 12°"],
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

describe('an order of bending', () => {
  it('names its bends with the end in front, and what follows once the tube is turned end for end', () => {
    expect(orderInWords(free)).toBe(
      'bends 3 and 4 in that order with end B in front, then bends 2 and 1 in that order with end A in front',
    );
    expect(orderInWords(free.slice(0, 1))).toBe('bend 3 with end B in front');
  });

  it('says how each bend is come to, and what is in its way', () => {
    expect(setUpInWords(stages[0]!)).toBe('End B in front.');
    const turned = (of: string) =>
      new RegExp(
        `Turn the tube [\\d.]+° (anti)?clockwise, looking from behind \\(end ${of}’s side\\) towards the die`,
        'u',
      );
    expect(setUpInWords(stages[1]!)).toMatch(turned('A'));
    expect(setUpInWords(stages[1]!)).toContain('Zero: bend 3 level, its leg to the left, as it comes off the die');
    expect(setUpInWords(stages[2]!)).toMatch(/^Turn the tube end for end, end A in front\. Turn the tube /u);
    expect(setUpInWords(stages[2]!)).toMatch(turned('B'));
    expect(stages.map(({ step }) => barredInWords(step))).toEqual([null, 'swings into the floor at 20°', null, null]);
  });
});

describe('what the search for an order found', () => {
  const plain = orderOf(tube, [
    [1, 'A', null],
    [2, 'A', 1],
    [3, 'A', 2],
    [4, 'A', 3],
  ]);
  const touching = plain.map((step, i) => (i === 2 ? { ...step, hit: hit(33.4) } : step));
  const rehearsal: Rehearsal = { plain, proposed: plain, reason: null, free: 384, all: 384 };

  it('that the plain order is free', () => {
    expect(searchInWords(rehearsal)).toEqual({
      tone: 'free',
      head: 'Free as it comes: bend after bend, end A in front',
      why: 'Every order keeps free, whichever end is in front.',
    });
  });

  it('that another order has to be taken, and what the plain one touches', () => {
    expect(searchInWords({ ...rehearsal, plain: touching, proposed: free, free: 12 })).toEqual({
      tone: 'order',
      head: 'Take bends 3 and 4 in that order with end B in front, then bends 2 and 1 in that order with end A in front',
      why: 'As it comes, bend 3 swings into the floor at 33°. 12 of 384 orders keep free, either end in front counted.',
    });
  });

  it('that there is none, and why', () => {
    expect(
      searchInWords({
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
    expect(searchInWords(unsearched)).toMatchObject({
      tone: 'free',
      why: 'It has 9 bends; orders are searched up to 8.',
    });
    expect(searchInWords({ ...unsearched, plain: touching })).toEqual({
      tone: 'none',
      head: 'Not free as it comes',
      why: 'It has 9 bends; orders are searched up to 8.',
    });
    expect(searchInWords({ ...unsearched, plain: [], reason: { kind: 'bends-overlap' } })).toEqual({
      tone: 'none',
      head: 'Cannot be rehearsed',
      why: 'Its bends overlap, so it cannot be made.',
    });
  });
});
