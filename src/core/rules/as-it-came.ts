/** Articles of a sheet that came with the program, after somebody has put a figure of it right: the words that came with it still name the old one. */
import type { RuleCheck } from '../job/kinds/rule-check.ts';
import { figuresOf } from './figures.ts';
import { SHIPPED } from './shipped/sheets.ts';

/** Whether its words are those of a shipped article, and its figures are not those that they were written for. */
export function hasOldWords(check: RuleCheck): boolean {
  if (check.kind === 'ask' || check.text === '') return false;
  const written = CAME.filter(({ kind, of, text }) => kind === check.kind && of === check.of && text === check.text);
  return written.length > 0 && written.every((each) => figuresIn(each) !== figuresIn(check));
}

const CAME: readonly RuleCheck[] = SHIPPED.flatMap(({ checks }) => checks);

const figuresIn = (check: RuleCheck): string => JSON.stringify(figuresOf(check).map((name) => check[name] ?? null));
