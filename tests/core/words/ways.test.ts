import { expect, it } from 'vitest';
import { readingsOf, wayOf, WAYS } from '../../../src/core/survey/ways.ts';
import { leftOverInWords, sureInWords } from '../../../src/core/words/residuals.ts';
import { farInWords, wayCalled, WAY_WORDS } from '../../../src/core/words/ways.ts';

it('each kind is found by its word, whatever its case, and by what a spreadsheet may call it', () => {
  for (const way of WAYS) expect(wayCalled(WAY_WORDS[way].toUpperCase())).toBe(way);
  expect(['tape', ' Z ', 'level', 'plumb line', 'feel'].map(wayCalled)).toEqual([
    'distance',
    'height',
    'level',
    'plumb',
    null,
  ]);
});

it('what a kind comes to is told by the same word', () => {
  for (const way of WAYS) {
    expect(readingsOf(way, 'a', 'b', 1).map((reading) => wayOf({ id: 'r', ...reading }))).toEqual(
      way === 'plumb' ? ['plumb', 'plumb'] : [way],
    );
  }
});

it('what is left over, and how sure a place is, in the unit of the job', () => {
  const left = { index: 0, residual: -2.04, standardised: 1, share: 0.4 };
  expect(leftOverInWords({ kind: 'distance' }, left, 'mm')).toBe('off 2.0 mm');
  expect(leftOverInWords({ kind: 'inclination' }, left, 'mm')).toBe('off 2.0°');
  expect(leftOverInWords({ kind: 'width' }, { ...left, share: 0 }, 'in')).toBe('nothing checks it');
  expect([sureInWords(1.44, 'mm'), sureInWords(1.44, 'in')]).toEqual(['± 1.4 mm', '± 0.06 in']);
});

it('how one place differs from another is said along the axis where it does most', () => {
  expect(farInWords([1, 2, -300])).toBe('lower');
  expect(farInWords([1, -20, 3])).toBe('further right');
  expect(farInWords([10, 2, 3])).toBe('further forward');
});
