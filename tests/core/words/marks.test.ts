/** The words and readings of marks, against tapes read by hand. */
import { describe, expect, it } from 'vitest';
import type { TapeMark, TapeStep } from '../../../src/core/marks/tape.ts';
import {
  leansInWords,
  markMeets,
  roundingInWords,
  sideNote,
  sideOf,
  troubleOf,
} from '../../../src/core/words/marks.ts';

const mark = (given: Partial<TapeMark>): TapeMark => ({
  kind: 'start',
  exact: 100,
  at: 100,
  bendLies: 'beyond',
  onBlank: true,
  ...given,
});

const step = (towards: 'A' | 'B'): TapeStep => ({
  bend: 1,
  front: towards === 'B' ? 'A' : 'B',
  towards,
  angle: 1,
  rotation: 0,
  rotationFrom: null,
  marks: [],
  angleOff: 0,
});

describe('the side on which a bend lies', () => {
  it('is named by the end, whichever way the tube is fed', () => {
    expect(sideOf(mark({}), step('B'))).toEqual({ arrow: '▸', words: 'towards end B' });
    expect(sideOf(mark({}), step('A'))).toEqual({ arrow: '◂', words: 'towards end A' });
    expect(sideOf(mark({ kind: 'end', bendLies: 'before' }), step('A'))).toEqual({
      arrow: '▸',
      words: 'towards end B',
    });
    expect(sideOf(mark({ kind: 'middle', bendLies: 'either-side' }), step('B')).arrow).toBe('◂▸');
  });
});

describe('how a mark is used', () => {
  it('a clamp mark says what it is set to and how far from there the bend begins', () => {
    const words = markMeets('clamp', 114.3, 'mm');
    expect(words).toContain('that the die’s clamp offset was measured to');
    expect(words).toContain('begins 114.3\u00a0mm past it, away from the end in front');
    expect(markMeets('clamp', 114.3, 'in')).toContain('4.50\u00a0in');
  });
  it('a middle mark has its bend on both sides, another on its arrow’s', () => {
    expect(sideNote('middle')).toContain('half on each side');
    expect(sideNote('clamp')).toContain('arrow');
  });
});

describe('before a mark is drawn', () => {
  it('is what is off the blank, what lies across the line, and nothing else', () => {
    expect(troubleOf(mark({ kind: 'clamp', at: -20, onBlank: false }))).toMatch(/beyond the end of the blank/u);
    expect(troubleOf(mark({ at: -20 }))).toMatch(/other side of the line/u);
    expect(troubleOf(mark({ at: 0 }))).toBeNull();
  });
});

describe('what rounding costs', () => {
  it('is said of the end that is not held', () => {
    const rounding = { endMoves: 1.0133, angleOff: 0, isNotable: true };
    expect(roundingInWords(rounding, 'A', 'in')).toBe('On this tape node B ends 0.040\u00a0in off, node A held.');
    expect(roundingInWords(rounding, 'B', 'mm')).toBe('On this tape node A ends 1.0\u00a0mm off, node B held.');
  });

  it('says that the scale goes before a second mark, where that is off, and is silent where all is small', () => {
    const rounding = { endMoves: 3, angleOff: (0.4 * Math.PI) / 180, isNotable: true };
    expect(roundingInWords(rounding, 'middle', 'mm')).toBe(
      'Pull by the scale: from mark to mark a bend would be up to 0.4° off. On this tape node B ends 3.0\u00a0mm off, node A held.',
    );
    expect(roundingInWords({ ...rounding, endMoves: 0.1 }, 'A', 'mm')).not.toContain('On this tape');
    expect(roundingInWords({ ...rounding, isNotable: false }, 'A', 'mm')).toBeNull();
  });
});

it('says what the signs after marks mean, where one has one', () => {
  const taken = (exact: number): TapeStep => ({ ...step('B'), marks: [mark({ exact })] });
  expect(leansInWords([taken(100)], 'mm', false)).toBeNull();
  expect(leansInWords([taken(100), taken(100.3)], 'mm', false)).toBe('+ is a hair more, − a hair less: up to 0.5 mm.');
  expect(leansInWords([taken(100.3)], 'mm', true)).toContain('up to 0.25 mm');
  expect(leansInWords([taken(100.5)], 'in', false)).toContain('up to 1/32 in');
  expect(leansInWords([taken(100.5)], 'in', true)).toContain('up to 1/64 in');
});
