/**
 * A rule sheet as the guided page shows and fills it: which of its articles answers which question, and the sheet with one more answer. Nothing is stored but
 * the articles themselves, in the order of the questions, and which questions the book does not ask.
 */
import type { RuleCheck, RuleMark } from '../job/kinds/rule-check.ts';
import type { RuleSheet } from '../job/kinds/rule-sheet.ts';
import { figuresOf, hasAny, withTyped, type FigureName, type FigureValue } from './figures.ts';
import { QUESTIONS, type Part, type Question } from './questionnaire.ts';
import { plainRole } from '../job/role.ts';

/** `open`: an article stands there, but not all of what it needs. `elsewhere`: an article is about it that this page cannot read back. */
export type AnswerState = 'unanswered' | 'answered' | 'open' | 'not-asked' | 'elsewhere';

/** The article that comes of each part of the question; null where there is none. */
export const articlesOf = (sheet: RuleSheet, question: Question): readonly (RuleCheck | null)[] =>
  question.parts.map((_part, i) => placesIn(sheet).find(({ at }) => isAt(at, question, i))?.check ?? null);

/** How far the question is answered. */
export function answerState(sheet: RuleSheet, question: Question): AnswerState {
  if (sheet.notAsked?.includes(question.id)) return 'not-asked';
  const found = articlesOf(sheet, question).flatMap((check, i) =>
    check === null ? [] : [{ check, part: question.parts[i]! }],
  );
  if (found.length === 0) return standsElsewhere(sheet, question) ? 'elsewhere' : 'unanswered';
  return found.some(({ check, part }) => isWhole(check, part)) ? 'answered' : 'open';
}

/** A mass alone says whom it binds, not to what. */
const isWhole = (check: RuleCheck, { figures }: Part): boolean =>
  figures.length === 0 ||
  hasAny(
    check,
    figuresOf(check).filter((name) => name !== 'massFrom' && name !== 'massUpTo'),
  );

/** An article that answers none of the questions asks the like of some of the same bars, with another figure or of another end, say. */
const standsElsewhere = (sheet: RuleSheet, { parts }: Question): boolean =>
  placesIn(sheet).some(({ check, at }) => at === null && parts.some((part) => isAbout(check, part.check)));

function isAbout(check: RuleCheck, other: RuleCheck): boolean {
  // What a person is to look at is known by its words alone; bars are counted in all or on each side.
  if (check.kind === 'ask' || check.kind !== other.kind) return false;
  const isSameBars = check.roles.some((role) => isAmong(other.roles, role));
  if (check.kind === 'present') return isSameBars;
  if (check.of !== other.of) return false;
  return isSameBars || check.roles.length === 0 || other.roles.length === 0;
}

const isAmong = (roles: readonly string[], role: string): boolean =>
  roles.some((each) => plainRole(each) === plainRole(role));

const DONE: readonly AnswerState[] = ['answered', 'not-asked', 'elsewhere'];

/** How many questions are answered, those that the book does not ask and those that an article of another form is about among them, and how many there are. */
export const progressOf = (sheet: RuleSheet): { readonly answered: number; readonly of: number } => ({
  answered: QUESTIONS.filter((question) => DONE.includes(answerState(sheet, question))).length,
  of: QUESTIONS.length,
});

/** Whether the guided page was used on it: an article or an answer names its question. */
export const isGuided = ({ checks, notAsked = [] }: RuleSheet): boolean =>
  notAsked.length > 0 || checks.some(({ question }) => question !== undefined);

/** The sheet with that figure typed, or taken away where it is null: it is as sure from then on as `mark` says. An article of which nothing is left goes. */
export const withAnswer = (
  sheet: RuleSheet,
  {
    question,
    part,
    name,
    value,
    mark,
  }: { question: Question; part: number; name: FigureName; value: FigureValue | null; mark: RuleMark },
): RuleSheet => changed(sheet, question, part, mark, (check) => withTyped(check, name, value, mark));

/** The sheet with the article of a part that has no figure, or without it. */
export const withAsked = (
  sheet: RuleSheet,
  { question, part, isAsked, mark }: { question: Question; part: number; isAsked: boolean; mark: RuleMark },
): RuleSheet => changed(sheet, question, part, mark, (check) => (isAsked ? check : null));

/** The sheet with the number of the article, or the shop's own words for it, in all that the question has there; in a first one where there is none yet. */
export function withWords(
  sheet: RuleSheet,
  {
    question,
    words,
    mark,
  }: { question: Question; words: Partial<Pick<RuleCheck, 'article' | 'text'>>; mark: RuleMark },
): RuleSheet {
  const there = articlesOf(sheet, question).flatMap((check, i) => (check === null ? [] : [i]));
  return (there.length === 0 ? [0] : there).reduce(
    (before, part) => changed(before, question, part, mark, (check) => ({ ...check, ...words })),
    sheet,
  );
}

/** The sheet that says that its book does not ask this, or does not say so any more. Its articles of it go. */
export function withNotAsked(sheet: RuleSheet, question: Question, isNot: boolean): RuleSheet {
  const { notAsked = [], ...rest } = sheet;
  const others = notAsked.filter((id) => id !== question.id);
  const gone = new Set(isNot ? articlesOf(sheet, question) : []);
  return withUnasked(
    { ...rest, checks: sheet.checks.filter((check) => !gone.has(check)) },
    isNot ? [...others, question.id] : others,
  );
}

const withUnasked = (sheet: RuleSheet, notAsked: readonly string[]): RuleSheet => {
  const { notAsked: _before, ...rest } = sheet;
  return notAsked.length === 0 ? rest : { ...rest, notAsked };
};

interface At {
  readonly question: number;
  readonly part: number;
}

const isAt = (at: At | null, question: Question, part: number): boolean =>
  at !== null && QUESTIONS[at.question] === question && at.part === part;

/** Each article with the part that it is an answer to; null where it is none. */
const placesIn = (sheet: RuleSheet): readonly { readonly check: RuleCheck; readonly at: At | null }[] =>
  sheet.checks.map((check) => ({ check, at: placeOf(check) }));

/** By the question that it names; of one that names none, by what it asks. */
function placeOf(check: RuleCheck): At | null {
  for (const [at, question] of QUESTIONS.entries()) {
    const part = question.parts.findIndex((each, i) =>
      check.question === undefined ? isAlike(check, each) : check.question === keyOf(question, i) && isOf(check, each),
    );
    if (part >= 0) return { question: at, part };
  }
  return null;
}

/** "header" of the first article that comes of it, "header.2" of the next. */
const keyOf = ({ id }: Question, part: number): string => (part === 0 ? id : `${id}.${part + 1}`);

const isOf = (check: RuleCheck, part: Part): boolean => check.kind === part.check.kind && check.of === part.check.of;

/** It asks the same of the same bars, and has no figure that the part does not ask for. What a person has to look at has no such mark. */
function isAlike(check: RuleCheck, part: Part): boolean {
  if (check.kind === 'ask' || !isOf(check, part)) return false;
  const { only, end, from, runs } = part.check;
  const asked = part.figures.map(({ name }) => name);
  return (
    check.only === only &&
    check.end === end &&
    check.from === from &&
    check.runs === runs &&
    sameRoles(check.roles, part.check.roles) &&
    sameRoles(check.onto ?? [], part.check.onto ?? []) &&
    !hasAny(
      check,
      figuresOf(check).filter((name) => !asked.includes(name)),
    )
  );
}

const sameRoles = (one: readonly string[], other: readonly string[]): boolean =>
  one.map(plainRole).toSorted().join() === other.map(plainRole).toSorted().join();

/** With the article of that part changed: put in at its place in the order of the questions where it was not there, taken out where nothing is left of it. */
function changed(
  sheet: RuleSheet,
  question: Question,
  part: number,
  mark: RuleMark,
  change: (check: RuleCheck) => RuleCheck | null,
): RuleSheet {
  const all = placesIn(sheet);
  const index = all.findIndex(({ at }) => isAt(at, question, part));
  const before = all[index]?.check ?? newArticle(sheet, question, part, mark);
  const next = change(before);
  const kept =
    next === null || isEmpty(next, question.parts[part]!) ? [] : [{ ...next, question: keyOf(question, part) }];
  const own = QUESTIONS.indexOf(question);
  const later = all.findIndex(
    ({ at }) => at !== null && (at.question > own || (at.question === own && at.part > part)),
  );
  const place = index >= 0 ? index : later >= 0 ? later : all.length;
  const checks = sheet.checks.toSpliced(place, index >= 0 ? 1 : 0, ...kept);
  return withUnasked(
    { ...sheet, checks },
    (sheet.notAsked ?? []).filter((id) => id !== question.id),
  );
}

/** It has the number and the words of what the question has there already, but not how sure that is. */
function newArticle(sheet: RuleSheet, question: Question, part: number, mark: RuleMark): RuleCheck {
  const { check } = question.parts[part]!;
  const beside = articlesOf(sheet, question).find((each) => each !== null);
  return { ...check, mark, ...(beside && { article: beside.article, text: beside.text }) };
}

/** Nothing is typed of it; a part without figures is there because somebody said so. */
const isEmpty = (check: RuleCheck, part: Part): boolean =>
  part.figures.length > 0 &&
  check.article === '' &&
  check.text === part.check.text &&
  check.answer === undefined &&
  !hasAny(check, figuresOf(check));
