/** The words of a bend run, against what a person would say of tubes made by hand. */
import { describe, expect, it } from 'vitest';
import { changeInWords, markMovedInWords, verdictInWords, wayInWords } from '../../../src/core/words/run.ts';

describe('what a reading says', () => {
  it('is good with how much it is off, and in which sense', () => {
    expect(verdictInWords({ kind: 'within', off: -0.32 }, 'in')).toEqual({
      title: 'Good',
      words: '0.3° less than asked for.',
    });
    expect(verdictInWords({ kind: 'within', off: 0.04 }, 'in').words).toBe('What was asked for.');
  });

  it('never makes a move of the end smaller than it is', () => {
    // 0.7 in is 22.4 thirty-seconds: 23 of them.
    const over = { kind: 'over', by: 1.24, endMoves: 0.7 * 25.4 } as const;
    expect(verdictInWords(over, 'in').title).toBe('Bent too far, by 1.2°');
    expect(verdictInWords(over, 'in').words).toContain('takes end B 23/32 in from its place');
    expect(verdictInWords(over, 'mm', true).words).toMatch(/^Left as it is, it takes end B 17\.8 mm/u);
  });

  it('says what a short bend lacks, and calls an impossible one so', () => {
    expect(verdictInWords({ kind: 'short', by: 2.36, more: 2.46, pullTo: 71.5 }, 'in').title).toBe('Short by 2.4°');
    expect(verdictInWords({ kind: 'impossible', opened: 'to-more' }, 'in').words).toMatch(/opens.*Read both again/u);
    expect(verdictInWords({ kind: 'impossible', opened: 'by-too-much' }, 'in').words).toMatch(
      /springs back.*Read both again/u,
    );
  });
});

describe('what else a run says', () => {
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
});
