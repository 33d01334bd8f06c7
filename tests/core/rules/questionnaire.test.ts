/** Every question of the guided page makes articles that the door for files takes and that are judged, and is read back from them. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { derive } from '../../../src/core/derive.ts';
import { emptyJob } from '../../../src/core/job/empty-job.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import type { RuleSheet } from '../../../src/core/job/kinds/rule-sheet.ts';
import { quantityOfFigure, type FigureName, type FigureValue } from '../../../src/core/rules/figures.ts';
import {
  answerState,
  articlesOf,
  progressOf,
  withAnswer,
  withAsked,
  withNotAsked,
  withWords,
} from '../../../src/core/rules/filling.ts';
import { judge } from '../../../src/core/rules/judge.ts';
import { QUESTIONS, type Question } from '../../../src/core/rules/questionnaire.ts';
import { ROLES } from '../../../src/core/job/role.ts';
import { FIA } from '../../../src/core/rules/shipped/fia.ts';
import { hasOldWords } from '../../../src/core/rules/as-it-came.ts';
import { articleInWords, unansweredInWords } from '../../../src/core/words/rule-book.ts';
import { drawn } from '../../draws.ts';
import { drawFrom, type Draw } from '../../reference/oracles/seeded.ts';

const EMPTY: RuleSheet = { sheet: 'hill', body: 'Valley Hill Climb', edition: '2026', on: '', checks: [] };
const question = (id: string): Question => QUESTIONS.find((each) => each.id === id)!;

/** Of each figure one that some book could ask, by what it counts. */
const VALUES = { length: 40, angle: 30, area: 6000, secondMoment: 30_000, count: 2, times: 3, share: 0.5, mass: 900 };

const valueOf = (at: Question, part: number, name: FigureName): FigureValue => {
  const quantity = quantityOfFigure(at.parts[part]!.check, name);
  return quantity === 'sizes' ? [{ outerDiameter: 45, wall: 2.5 }] : VALUES[quantity];
};

const answered = (sheet: RuleSheet, at: Question): RuleSheet =>
  at.parts.reduce(
    (before, { figures }, part) =>
      figures.length === 0
        ? withAsked(before, { question: at, part, isAsked: true, mark: 'read' })
        : figures.reduce(
            (so, { name }) =>
              withAnswer(so, { question: at, part, name, value: valueOf(at, part, name), mark: 'read' }),
            before,
          ),
    sheet,
  );

const throughDoor = (sheet: RuleSheet): RuleSheet => {
  const parsed = parseJob(serialiseJob({ ...emptyJob('mm'), rules: [sheet] }));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  return parsed.job.rules[0]!;
};

const demo = () => {
  const parsed = parseJob(readFileSync('public/demo.cagewright.json', 'utf8'));
  return (parsed as Extract<typeof parsed, { ok: true }>).job;
};

describe('the questions', () => {
  it('have ids of their own, and roles that a cage has', () => {
    expect(new Set(QUESTIONS.map(({ id }) => id)).size).toBe(QUESTIONS.length);
    const roles = QUESTIONS.flatMap(({ parts }) =>
      parts.flatMap(({ check }) => [...check.roles, ...(check.onto ?? [])]),
    );
    expect(roles.filter((role) => !(ROLES as readonly string[]).includes(role))).toEqual([]);
  });

  it.each(QUESTIONS.map((each) => [each.id, each] as const))(
    '%s: its articles go through the door and come back',
    (_id, at) => {
      const sheet = answered(EMPTY, at);
      expect(sheet.checks).toHaveLength(at.parts.length);
      const back = throughDoor(sheet);
      expect(back).toEqual(sheet);
      expect(articlesOf(back, at)).toEqual(sheet.checks);
      expect(answerState(back, at)).toBe('answered');
      expect(progressOf(back).answered).toBe(1);
      for (const other of QUESTIONS) if (other !== at) expect(answerState(back, other)).toBe('unanswered');
    },
  );

  it('all answered make a sheet in their order, each article of which is judged by a figure', () => {
    const sheet = QUESTIONS.toReversed().reduce(answered, EMPTY);
    expect(sheet.checks).toEqual(QUESTIONS.reduce(answered, EMPTY).checks);
    expect(progressOf(sheet)).toEqual({ answered: QUESTIONS.length, of: QUESTIONS.length });
    const derivation = derive({ ...demo(), carMass: 800, rules: [throughDoor(sheet)] });
    const verdicts = judge((derivation as Extract<typeof derivation, { ok: true }>).value);
    expect(verdicts).toHaveLength(sheet.checks.length);
    expect(verdicts.filter(({ because }) => because.id === 'no-figure')).toEqual([]);
  });

  it('are read back from a sheet that was not filled in on the page, but for what a person has to look at', () => {
    for (const at of QUESTIONS) {
      if (at.id === 'tube-heavy') continue;
      const sheet = answered(EMPTY, at);
      const bare = { ...sheet, checks: sheet.checks.map(({ question: _question, ...check }) => check) } as RuleSheet;
      const isForPerson = at.parts[0]!.check.kind === 'ask';
      expect(answerState(bare, at), at.id).toBe(isForPerson ? 'unanswered' : 'answered');
    }
  });
});

describe('an answer', () => {
  it('taken away leaves the sheet as it was', () => {
    const [at] = [question('stay-angle')];
    const typed = withAnswer(EMPTY, { question: at, part: 0, name: 'least', value: 30, mark: 'own' });
    expect(withAnswer(typed, { question: at, part: 0, name: 'least', value: null, mark: 'own' })).toEqual(EMPTY);
  });

  it('without its figure is an article that says that it has none', () => {
    const sheet = withWords(EMPTY, { question: question('hoop-lean'), words: { article: '8.2' }, mark: 'own' });
    expect(answerState(sheet, question('hoop-lean'))).toBe('open');
    const derivation = derive({ ...demo(), rules: [sheet] });
    const [verdict] = judge((derivation as Extract<typeof derivation, { ok: true }>).value);
    expect(verdict).toMatchObject({ verdict: 'not-checked', because: { id: 'no-figure' } });
  });

  it('of two articles gives both its number and its words', () => {
    const at = question('harness');
    const sheet = withWords(answered(EMPTY, at), { question: at, words: { article: '9.1', text: 'bar' }, mark: 'own' });
    expect(sheet.checks).toMatchObject([
      { kind: 'present', article: '9.1', text: 'bar' },
      { kind: 'section', article: '9.1', text: 'bar' },
    ]);
  });

  it('that the book does not ask it takes its articles out; a figure takes that back', () => {
    const at = question('roof');
    const not = withNotAsked(answered(EMPTY, at), at, true);
    expect(not).toMatchObject({ checks: [], notAsked: ['roof'] });
    expect(answerState(not, at)).toBe('not-asked');
    expect(withNotAsked(not, at, false)).toEqual(EMPTY);
    expect(answered(not, at).notAsked).toBeUndefined();
  });

  it('touches no article of another question, and none that is no answer, whatever is typed in what order', () => {
    const own = { ...question('roof').parts[0]!.check, roles: ['tunnel-brace'], least: 1, article: 'own' };
    for (let seed = 0; seed < drawn(12, 300); seed++) {
      const draw: Draw = drawFrom(seed);
      let sheet: RuleSheet = { ...EMPTY, checks: [own] };
      for (let step = 0; step < 25; step++) {
        const at = draw.oneOf(QUESTIONS);
        const others = QUESTIONS.filter((each) => each !== at);
        const before = others.flatMap((each) => articlesOf(sheet, each));
        sheet = draw.chance(0.7)
          ? answered(sheet, at)
          : draw.chance(0.5)
            ? withNotAsked(sheet, at, true)
            : withWords(sheet, { question: at, words: { text: `words ${step}` }, mark: 'own' });
        const after = others.flatMap((each) => articlesOf(sheet, each));
        expect(
          after.every((check, i) => check === before[i]),
          `seed ${seed}`,
        ).toBe(true);
        expect(sheet.checks.filter((check) => check === own)).toHaveLength(1);
      }
      expect(throughDoor(sheet)).toEqual(sheet);
    }
  });
});

describe('a sheet that came with the program', () => {
  it('has a figure that is put right marked as the page says, and no words of the old figure beside a verdict', () => {
    const at = question('hoop-lean');
    expect(articlesOf(FIA, at)).toMatchObject([{ mark: 'memory', most: 10 }]);
    const set = (value: number, sheet = FIA) =>
      withAnswer(sheet, { question: at, part: 0, name: 'most', value, mark: 'read' });
    const [same] = articlesOf(set(10), at);
    expect(same).toMatchObject({ mark: 'memory' });
    const [other] = articlesOf(set(12), at);
    expect(other).toMatchObject({ mark: 'read', most: 12, text: 'Main rollbar: within 10 degrees of the vertical.' });
    expect([same, other].map((check) => hasOldWords(check!))).toEqual([false, true]);
    const heads = [same, other].map((check) => articleInWords(check!, FIA, 'mm'));
    expect(heads[0]).toContain('within 10 degrees');
    expect(heads[1]).toMatch(/at most 12\.0°\.$/u);
    expect(heads[1]).not.toContain('10');
    // Typed back, its words are true again.
    expect(hasOldWords(articlesOf(set(10, set(12)), at)[0]!)).toBe(false);
  });

  it('with an article of another form about a question says so, and counts it as answered', () => {
    // Both hoops in one article, where the page asks of hoops, legs and stays.
    expect(answerState(FIA, question('tube-light'))).toBe('elsewhere');
    expect(answerState(FIA, question('gussets'))).toBe('unanswered');
    const { answered: done } = progressOf(FIA);
    const states = QUESTIONS.map((each) => answerState(FIA, each));
    expect(states.filter((state) => state !== 'unanswered' && state !== 'open')).toHaveLength(done);
  });

  it('says how many questions nobody has answered once its page is used, and not before', () => {
    expect(unansweredInWords(FIA)).toBeNull();
    const used = withNotAsked(FIA, question('roof'), true);
    const { answered: done, of } = progressOf(used);
    expect(unansweredInWords(used)).toBe(
      `${of - done} of ${of} questions of FIA Appendix J, art. 253-8, 2009, as quoted; marked figures from memory are not answered: nothing is checked there.`,
    );
  });
});
