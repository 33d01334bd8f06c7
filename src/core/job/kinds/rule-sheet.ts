/**
 * Rule sheets: what a rule book asks, article by article, as the shop typed it. Nothing here is a book: body, edition and article say where to look, and the
 * shop's own words what was understood.
 */
import * as v from 'valibot';
import { remembered } from '../../remembered.ts';
import { fault, quoted, type Fault } from '../fault.ts';
import { MOST_ARTICLES, MOST_SHEETS } from '../limits.ts';
import { id, words } from './fields.ts';
import type { Kind } from './kind.ts';
import { checkPart, type RuleCheck } from './rule-check.ts';

export interface RuleSheet {
  /** What a verdict names it by. */
  readonly sheet: string;
  /** Who gives the rules, and which edition of them. */
  readonly body: string;
  readonly edition: string;
  /** Date on which it was typed or last gone through, as 2026-03-02; '' when not noted. */
  readonly on: string;
  readonly checks: readonly RuleCheck[];
  /** Of the guided page: the questions that the book does not ask. */
  readonly notAsked?: readonly string[];
}

export const ruleSheetKind: Kind<RuleSheet> = {
  inWords: 'a rule sheet',
  shape: v.looseObject({
    sheet: id,
    body: v.optional(words, ''),
    edition: v.optional(words, ''),
    on: v.optional(words, ''),
    checks: v.optional(
      v.pipe(v.array(checkPart.shape), v.maxLength(MOST_ARTICLES, `more than ${MOST_ARTICLES} articles`)),
      [],
    ),
    notAsked: v.exactOptional(v.pipe(v.array(words), v.maxLength(MOST_ARTICLES, `more than ${MOST_ARTICLES}`))),
  }),
  keys: ['sheet body edition on checks notAsked', ...checkPart.keys],
  most: MOST_SHEETS,
  beyondShape: (sheet, at, index, sheets) => [
    ...(firstOf(sheets).get(sheet.sheet) === index
      ? []
      : [fault(`${at}.sheet`, `${quoted(sheet.sheet)} is there already`)]),
    ...sheet.checks.flatMap((check, i) => figureFaults(check, `${at}.checks[${i}]`)),
  ],
};

/** Where each id stands first: a file may hold very many before it is turned away for that. */
const firstOf = remembered((sheets: readonly RuleSheet[]): ReadonlyMap<string, number> => {
  const first = new Map<string, number>();
  for (const [i, { sheet }] of sheets.entries()) if (!first.has(sheet)) first.set(sheet, i);
  return first;
});

/** Nothing lies within limits that stand the wrong way round. */
const figureFaults = (
  { kind, least, most, massFrom, massUpTo, allowance = 0, wall, sizes = [] }: RuleCheck,
  at: string,
): readonly Fault[] => [
  ...(kind === 'section'
    ? [['least', least] as const, ['most', most] as const].flatMap(([key, figure]) =>
        figure === undefined ? [] : [fault(`${at}.${key}`, 'a section is asked for by sizes, wall, area and the like')],
      )
    : []),
  ...([...sizes.map((size) => size.wall), wall ?? Infinity].some((each) => each <= allowance)
    ? [fault(`${at}.allowance`, 'leaves nothing of a wall')]
    : []),
  ...(least !== undefined && most !== undefined && least > most ? [fault(`${at}.least`, 'above the most')] : []),
  ...(massFrom !== undefined && massUpTo !== undefined && massFrom >= massUpTo
    ? [fault(`${at}.massFrom`, 'not below massUpTo')]
    : []),
];
