/** A job's rule sheet in the shop: one a book and edition, without what was answered of the car. */
import { expect, it } from 'vitest';
import type { RuleSheet } from '../../../src/core/job/kinds/rule-sheet.ts';
import { keepSheet } from '../../../src/core/shop/keep-sheet.ts';
import { parseShop } from '../../../src/core/shop/parse.ts';
import { serialiseShop } from '../../../src/core/shop/serialise.ts';
import { EMPTY_SHOP } from '../../../src/core/shop/types.ts';

const sheet = (fields: Partial<RuleSheet>): RuleSheet => ({
  sheet: 'x',
  body: 'Valley Hill Climb',
  edition: '2026',
  on: '',
  checks: [
    {
      article: '1',
      text: '',
      mark: 'own',
      roles: [],
      kind: 'ask',
      of: 'answer',
      answer: { says: 'met', by: 'A', note: '', on: '' },
    },
  ],
  ...fields,
});

it('takes the place of the same book and edition, and stands beside any other', () => {
  const once = keepSheet(EMPTY_SHOP, sheet({}));
  expect(once.rules).toMatchObject([{ sheet: 'valley-hill-climb-2026', checks: [{ article: '1' }] }]);
  expect(once.rules[0]!.checks[0]).not.toHaveProperty('answer');
  expect(keepSheet(once, sheet({ sheet: 'y', checks: [] })).rules).toMatchObject([{ checks: [] }]);
  expect(keepSheet(once, sheet({ edition: '2027' })).rules).toHaveLength(2);
});

it('one that nobody has named takes no other’s place, and names that come to one id are told apart', () => {
  const unnamed = keepSheet(keepSheet(EMPTY_SHOP, sheet({ body: '', edition: '' })), sheet({ body: '', edition: '' }));
  expect(unnamed.rules).toHaveLength(2);
  const [one, other] = [sheet({ body: 'Alpha 1', edition: '2' }), sheet({ body: 'Alpha', edition: '1 2' })];
  const both = keepSheet(keepSheet(EMPTY_SHOP, one), other);
  expect(both.rules.map(({ body }) => body)).toEqual(['Alpha 1', 'Alpha']);
  expect(parseShop(serialiseShop(both)).ok).toBe(true);
});

it.each(['', '\u202E', '<b>', 'x'.repeat(2000), "it's 'ere'", '\n\n'])(
  'has an id that the door takes, whatever the book is called: %j',
  (body) => {
    const shop = keepSheet(EMPTY_SHOP, sheet({ body, edition: '' }));
    expect(parseShop(serialiseShop(shop))).toEqual({ ok: true, shop });
  },
);
