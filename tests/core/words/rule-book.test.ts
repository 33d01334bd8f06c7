/** What the page says of rule sheets as a whole, and how it heads their articles. */
import { describe, expect, it } from 'vitest';
import type { RuleCheck } from '../../../src/core/job/kinds/rule-check.ts';
import type { RuleSheet } from '../../../src/core/job/kinds/rule-sheet.ts';
import { articleInWords, bookInWords, sheetInWords, sheetsInWords } from '../../../src/core/words/rule-book.ts';

const harness = (fields: object): RuleCheck => ({
  article: '6.1',
  text: 'A harness bar',
  mark: 'own',
  roles: ['harness-bar'],
  kind: 'present',
  of: 'bars',
  least: 1,
  ...fields,
});

const sheet = (fields: Partial<RuleSheet>): RuleSheet => ({
  sheet: 'sheet',
  body: 'Valley Hill Climb',
  edition: '2026',
  on: '',
  checks: [],
  ...fields,
});

describe('an article is headed', () => {
  it('by the shop’s words; where two share them, by what it asks as well', () => {
    const [there, tube] = [
      harness({}),
      harness({ kind: 'section', of: 'size', sizes: [{ outerDiameter: 38, wall: 2.5 }] }),
    ];
    expect(articleInWords(there, sheet({ checks: [there] }), 'mm')).toBe('A harness bar');
    const both = sheet({ checks: [there, tube] });
    const heads = [there, tube].map((check) => articleInWords(check, both, 'mm'));
    expect(heads.every((head) => head.startsWith('A harness bar. Harness bar: '))).toBe(true);
    expect(heads[1]).toContain('38');
    expect(new Set(heads).size).toBe(2);
  });

  it('by what it asks where the shop has no words for it', () => {
    const bare = harness({ text: ' ' });
    expect(articleInWords(bare, sheet({ checks: [bare] }), 'mm')).toMatch(/^Harness bar: .*1\.$/u);
  });
});

it('a book is named beside an article where there are several, with its edition where only that tells them apart', () => {
  const [one, next, club] = [
    sheet({}),
    sheet({ sheet: 'b', edition: '2027' }),
    sheet({ sheet: 'c', body: 'Club rules' }),
  ];
  expect(bookInWords(one, [one])).toBe('');
  expect([one, club].map((each) => bookInWords(each, [one, club]))).toEqual(['Valley Hill Climb', 'Club rules']);
  expect([one, next].map((each) => bookInWords(each, [one, next]))).toEqual([
    'Valley Hill Climb, 2026',
    'Valley Hill Climb, 2027',
  ]);
});

it('every sheet that was held against the frame is named, one without a name by what it goes by', () => {
  expect(sheetInWords({ sheet: 'sheet-2', body: ' ', edition: '' })).toBe('unnamed sheet-2');
  expect(sheetsInWords([sheet({}), sheet({ body: 'Club rules', edition: '' })])).toBe(
    'Held against these sheets: Valley Hill Climb, 2026; Club rules.',
  );
});
