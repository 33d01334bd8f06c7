/** The words of a bend run, against what a person would say of steps made by hand. */
import { describe, expect, it } from 'vitest';
import type { RunStep } from '../../../src/core/run/run.ts';
import {
  changeInWords,
  dayOf,
  markMovedInWords,
  measurableAt,
  onTo,
  orderInWords,
  spokenOf,
  stopsOf,
  verdictInWords,
  wayInWords,
} from '../../../src/ui/bending/run-words.ts';
import { sameOrder } from '../../../src/core/solve/bend-order.ts';

const cut: RunStep = { kind: 'cut', key: 'cut', done: true, blank: 1000, grip: [0, 0] };
const check: RunStep = { kind: 'check', key: 'check', done: false, checks: [] };
const read = (bend: number): RunStep => ({
  kind: 'read',
  key: `read ${bend}`,
  done: false,
  bend,
  target: 1,
  start: 100,
  reading: null,
  verdict: null,
});
const pull = (bend: number): RunStep => ({
  kind: 'pull',
  key: `pull ${bend}`,
  done: false,
  bend,
  target: 1,
  advice: { kind: 'law', pullTo: 88, exact: 1.53, within: null },
});

describe('where one is in a run', () => {
  it('has one stop a bend, in the order of bending', () => {
    const stops = stopsOf([cut, pull(3), read(3), pull(1), read(1), check]);
    expect(stops.map(({ label }) => label)).toEqual(['Cut', '3', '1', 'Check']);
    expect(stops[1]!.name).toBe('Bend 3');
    expect(stops[1]!.steps.map(({ key }) => key)).toEqual(['pull 3', 'read 3']);
  });

  it('says where a key leads', () => {
    expect([read(2), check, cut, undefined].map(onTo)).toEqual([
      'On to bend 2',
      'On to the check',
      'On: cut the blank',
      'On to the end',
    ]);
  });

  it('tells the order with the end in front, and where the tube is flipped', () => {
    const order = [
      { bend: 2, front: 'A' },
      { bend: 1, front: 'A' },
      { bend: 3, front: 'B' },
    ] as const;
    expect(orderInWords(order)).toBe('Bends 2, 1 with end A in front; then 3 with end B in front');
    expect(orderInWords(order.slice(0, 1))).toBe('Bend 2 with end A in front');
    expect(sameOrder(order, [...order])).toBe(true);
    expect(sameOrder(order, order.toReversed())).toBe(false);
    expect(sameOrder(order, [...order.slice(0, 2), { bend: 3, front: 'A' }])).toBe(false);
  });

  it('measures what lies between two bends once both are made', () => {
    expect(measurableAt(2, [1, 2])).toEqual([2]);
    expect(measurableAt(1, [3, 2, 1])).toEqual([2]);
    expect(measurableAt(2, [1, 2, 3])).toEqual([2, 3]);
    expect(measurableAt(1, [1])).toEqual([]);
  });
});

describe('what a reading says', () => {
  it('is good with how much it is off, and in which sense', () => {
    expect(verdictInWords({ kind: 'within', off: -0.32 }, 'in')).toEqual({
      title: 'Good',
      words: '0.3° less than asked for.',
    });
    expect(verdictInWords({ kind: 'within', off: 0.04 }, 'in').words).toBe('What was asked for.');
  });

  it('never makes a move of the end smaller than it is', () => {
    // 0.7 in is 11.2 sixteenths: 12 of them are 3/4.
    const over = { kind: 'over', by: 1.24, endMoves: 0.7 * 25.4 } as const;
    expect(verdictInWords(over, 'in').title).toBe('Bent too far, by 1.2°');
    expect(verdictInWords(over, 'in').words).toContain('takes end B 3/4 in from its place');
    expect(verdictInWords(over, 'mm', true).words).toMatch(/^Left as it is, it takes end B 17\.8 mm/u);
  });

  it('says what a short bend lacks, and calls an impossible one so', () => {
    expect(verdictInWords({ kind: 'short', by: 2.36, more: 2.46, pullTo: 71.5 }, 'in').title).toBe('Short by 2.4°');
    expect(verdictInWords({ kind: 'impossible', opened: 'to-more' }, 'in').words).toMatch(/opens.*Read both again/u);
    expect(verdictInWords({ kind: 'impossible', opened: 'by-too-much' }, 'in').words).toMatch(
      /springs back.*Read both again/u,
    );
  });

  it('says a first pull aloud as one', () => {
    const first = { ...pull(2), advice: { kind: 'first', pullTo: 78, why: 'slack-or-spring' } } as RunStep;
    expect(spokenOf(pull(2), 'in')).toBe('To 88 degrees.');
    expect(spokenOf(first, 'in')).toBe('To 78 degrees first, then let go and read.');
  });
});

describe('what else is told', () => {
  it('what is drawn otherwise, each in its own words', () => {
    expect(changeInWords({ what: 'bends', was: 1, now: 2 }, 'in')).toBe('It had 1 bend, now it has 2.');
    expect(changeInWords({ what: 'leg', index: 2, was: 254, now: 279.4 }, 'in')).toBe(
      'Leg 2 was 10 in, now it is 11 in.',
    );
    expect(changeInWords({ what: 'rotation', index: 3, was: 0, now: -12.5 }, 'mm')).toBe(
      'The rotation before bend 3 was 0.0°, now it is −12.5°.',
    );
  });

  it('another die or section, with what differs', () => {
    const die = { id: 'd', name: 'Main', centrelineRadius: 152.4, clampOffset: 101.6 };
    const die2 = { id: 'd2', name: '5 in CLR', centrelineRadius: 127, clampOffset: 101.6 };
    expect(changeInWords({ what: 'die', was: die, now: die2 }, 'in')).toBe(
      'The die was Main · 6 in CLR, now it is 5 in CLR.',
    );
    expect(changeInWords({ what: 'die', was: die, now: { ...die, clampOffset: 76.2 } }, 'in')).toBe(
      'The die’s clamp offset was 4 in, now it is 3 in.',
    );
    const section = { id: 's', name: 'Tube', outerDiameter: 44.45, wall: 3.048 };
    expect(changeInWords({ what: 'section', was: section, now: { ...section, wall: 2.413 } }, 'in')).toBe(
      'The section was Tube · 1 3/4 x .120, now it is Tube · 1 3/4 x .095.',
    );
    expect(changeInWords({ what: 'section', was: section, now: { ...section, id: 't' } }, 'in')).toContain('another');
  });

  it('which way the end lies off, leaving out what no tape shows', () => {
    expect(wayInWords([0, 0, 0], [25.4, -12.7, 0.1], 'in')).toBe('1 in forward, 1/2 in right');
    expect(wayInWords([0, 0, 0], [-3, 0, -4], 'mm')).toBe('3.0 mm back, 4.0 mm down');
    expect(wayInWords([5, 5, 5], [5, 5, 5], 'mm')).toBe('');
  });

  it('where a mark went', () => {
    expect(markMovedInWords(-25.4, 'in')).toContain('moved 1 in towards end A');
    expect(markMovedInWords(3, 'mm')).toContain('moved 3.0 mm towards end B');
  });

  it('the day where the shop is', () => {
    expect(dayOf(new Date(2026, 2, 5, 23, 59))).toBe('2026-03-05');
  });
});
