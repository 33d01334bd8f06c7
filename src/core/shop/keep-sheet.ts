/** A rule sheet of a job, kept in the shop for other jobs: one sheet a book and edition. */
import { blankSheet } from '../job/blank-sheet.ts';
import type { RuleSheet } from '../job/kinds/rule-sheet.ts';
import { freeId } from './free-id.ts';
import type { Shop } from './types.ts';

/**
 * The shop with that sheet, in the place of the one of the same book and edition where it has one; without what was answered of the car. One without either is no other's
 * next edition, and stands by itself.
 */
export function keepSheet(shop: Shop, sheet: RuleSheet): Shop {
  const isNamed = `${sheet.body}${sheet.edition}`.trim() !== '';
  const at = shop.rules.findIndex((each) => isNamed && each.body === sheet.body && each.edition === sheet.edition);
  const kept: RuleSheet = {
    ...blankSheet(sheet),
    sheet:
      at < 0 ? freeId(new Set(shop.rules.map((each) => each.sheet)), idOf(sheet), 'sheet-') : shop.rules[at]!.sheet,
  };
  return { ...shop, rules: at < 0 ? [...shop.rules, kept] : shop.rules.with(at, kept) };
}

/** Longer ones are cut: ids have a limit. */
const LONGEST = 100;

/** Of book and edition, so that two tabs give one book one id. */
const idOf = ({ body, edition }: RuleSheet): string =>
  Array.from(
    `${body} ${edition}`
      .toLowerCase()
      .replaceAll(/[^\p{L}\p{N}]+/gu, '-')
      .replaceAll(/^-|-$/gu, ''),
  )
    .slice(0, LONGEST)
    .join('') || 'sheet';
