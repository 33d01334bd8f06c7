/** The words and readings of marks, against tapes read by hand. */
import { describe, expect, it } from 'vitest';
import type { TapeMark, TapeStep } from '../../../src/core/shop/tape.ts';
import {
  noteOf,
  readTapeView,
  readTolerances,
  roundingInWords,
  sideOf,
  tapeReading,
  tapesOf,
  type TapeView,
} from '../../../src/ui/shop/mark-words.ts';

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
  towards,
  angle: 1,
  rotation: 0,
  rotationFrom: null,
  marks: [],
  angleOff: 0,
});

const AT_FIRST: TapeView = { from: 'A', style: 'start', fine: false };

describe('what was kept', () => {
  it('is found again', () => {
    const view = { from: 'middle', style: 'tangents', fine: true };
    expect(readTapeView(view)).toEqual(view);
    expect(readTolerances({ angle: 0, rotation: 0.25, mark: 2 })).toEqual({ angle: 0, rotation: 0.25, mark: 2 });
  });

  it('is left where it cannot be used', () => {
    for (const kept of [null, 'start', 3, [], { from: 'C', style: 'top', fine: 'yes' }])
      expect(readTapeView(kept)).toEqual(AT_FIRST);
    expect(readTolerances({ angle: -1, rotation: Number.NaN, mark: 400 })).toEqual({
      angle: 0.5,
      rotation: 0.5,
      mark: 1,
    });
  });
});

describe('a reading', () => {
  it('has the digits of its tape: sixteenths and thirty-seconds, whole and half millimetres', () => {
    expect(tapeReading(19.0625 * 25.4, 'in', false).text).toBe('19 1/16');
    expect(tapeReading(19.03125 * 25.4, 'in', true).text).toBe('19 1/32');
    expect(tapeReading(394, 'mm', false).text).toBe('394');
    expect(tapeReading(394.5, 'mm', true).text).toBe('394.5');
  });

  it('of a division is never called rounded', () => {
    for (const unit of ['in', 'mm'] as const)
      for (const [i, tape] of tapesOf(unit).entries())
        for (const count of [-7, 1, 305, 2401])
          expect(tapeReading(count * tape.step, unit, i === 1).exact, `${count} of ${tape.label}`).toBe(true);
  });
});

describe('the side on which a bend lies', () => {
  it('is told by the end, whichever way the tube is fed', () => {
    expect(sideOf(mark({}), step('B'))).toEqual({ arrow: '▸', words: 'towards end B' });
    expect(sideOf(mark({}), step('A'))).toEqual({ arrow: '◂', words: 'towards end A' });
    expect(sideOf(mark({ kind: 'end', bendLies: 'before' }), step('A'))).toEqual({
      arrow: '▸',
      words: 'towards end B',
    });
    expect(sideOf(mark({ kind: 'middle', bendLies: 'either-side' }), step('B')).arrow).toBe('◂▸');
  });
});

describe('the note beside a mark', () => {
  it('tells two marks of a bend apart, and nothing where there is one', () => {
    const both: TapeView = { ...AT_FIRST, style: 'tangents' };
    expect(noteOf(mark({}), both)).toBe('starts');
    expect(noteOf(mark({ kind: 'end' }), both)).toBe('ends');
    expect(noteOf(mark({}), AT_FIRST)).toBe('');
  });

  it('tells what is off the blank, and what lies across the line', () => {
    expect(noteOf(mark({ kind: 'clamp', at: -20, onBlank: false }), AT_FIRST)).toMatch(/beyond the end of the blank/u);
    expect(noteOf(mark({ at: -20 }), { from: 'middle', style: 'tangents', fine: false })).toBe(
      'starts, on the other side of the line',
    );
  });
});

describe('what rounding costs', () => {
  it('is told of the end that is not held', () => {
    const rounding = { endMoves: 1.0133, angleOff: 0, told: true };
    expect(roundingInWords(rounding, 'A', 'in')).toBe('Rounded to this tape, end B comes out 0.040 in off.');
    expect(roundingInWords(rounding, 'B', 'mm')).toBe('Rounded to this tape, end A comes out 1.0 mm off.');
  });

  it('has the angle where a bend is made from mark to mark, and is silent where it is small', () => {
    const rounding = { endMoves: 3, angleOff: (0.4 * Math.PI) / 180, told: true };
    expect(roundingInWords(rounding, 'middle', 'mm')).toMatch(/end B comes out 3\.0 mm off, and bends by up to 0\.4°/u);
    expect(roundingInWords({ ...rounding, told: false }, 'A', 'mm')).toBeNull();
  });
});
