/** What the page says of rule sheets as a whole, and how it heads their articles. */
import { describe, expect, it } from 'vitest';
import type { RuleCheck } from '../../../src/core/job/kinds/rule-check.ts';
import type { RuleSheet } from '../../../src/core/job/kinds/rule-sheet.ts';
import type { Verdict, VerdictWord } from '../../../src/core/rules/types.ts';
import {
  alsoAskedBy,
  articleInWords,
  bookInWords,
  linesInWords,
  sheetInWords,
  sheetsInWords,
  tallyInWords,
  tallyOf,
} from '../../../src/core/words/rule-book.ts';
import { verdictInWords } from '../../../src/core/words/rules.ts';
import { derived } from '../frame.ts';

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

it('counts articles in the same words wherever they are counted, and says where fewer lines stand below', () => {
  const of = (verdict: VerdictWord, id = 'measured') => ({ verdict, because: { id } }) as unknown as Verdict;
  const all = [of('met'), of('not-met'), of('met'), of('not-checked', 'other-mass'), of('not-checked', 'no-mass')];
  expect(tallyInWords(all)).toBe('1 not met, 1 not checked, 2 met, 1 for cars of another mass');
  expect(tallyOf(all).reduce((sum, { count }) => sum + count, 0)).toBe(all.length);
  expect(linesInWords(33, 33)).toBeNull();
  expect(linesInWords(24, 33)).toMatch(/^33 articles on 24 lines: /u);
  expect(alsoAskedBy([sheet({}), sheet({ body: 'Club rules' })])).toBe(
    'Also asked by: Valley Hill Climb, 2026; Club rules, 2026',
  );
});

it('a figure among several things names what they are: helmets and straps are no tubes', () => {
  const frame = derived({ nodes: {}, members: [] });
  const met = (kind: string, of: string, count: number): string =>
    verdictInWords(
      {
        sheet: 's',
        index: 0,
        check: { article: '', text: '', mark: 'own', roles: [], kind, of },
        verdict: 'met',
        value: 80,
        limit: 50,
        bound: 'least',
        margin: 30,
        quantity: 'length',
        count,
        concerns: ['a', 'b'],
        envelope: null,
        bend: null,
        at: null,
        to: null,
        because: { id: 'measured' },
      } as unknown as Verdict,
      frame,
    );
  expect(met('head-room', 'line-front', 2)).toContain('the least of 2 helmets');
  expect(met('harness', 'strap-angle', 4)).toContain('the least of 4 straps');
  expect(met('section', 'size', 5)).toContain('the least of 2 tubes');
});
