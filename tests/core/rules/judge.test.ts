import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { derive, type Derived } from '../../../src/core/derive.ts';
import { updateMember } from '../../../src/core/edit/members.ts';
import { setAnswer, setCarMass } from '../../../src/core/edit/rules.ts';
import { faultLine } from '../../../src/core/job/fault.ts';
import type { RuleCheck } from '../../../src/core/job/kinds/rule-check.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { judge } from '../../../src/core/rules/judge.ts';
import { secondMomentOf } from '../../../src/core/rules/kinds/section.ts';
import { sectionArea } from '../../../src/core/solve/amount.ts';
import { article } from '../../../src/core/rules/shipped/article.ts';
import { SHIPPED } from '../../../src/core/rules/shipped/sheets.ts';
import { verdictInWords } from '../../../src/core/words/rules.ts';
import { SQUARE } from '../../reference/jobs.ts';
import { cageOf, hoop, stay, TOP, verdictOn } from './cage.ts';
import { drawn } from '../../draws.ts';

function demo(checks: readonly RuleCheck[]): Job {
  const read = parseJob(readFileSync('tests/fixtures/demo-typed.cagewright.json', 'utf8'));
  if (!read.ok) throw new Error('no demo');
  return { ...read.job, rules: [{ sheet: 't', body: 'Test', edition: '1', on: '', checks }] };
}

function derived(job: Job, before?: Derived): Derived {
  const derivation = derive(job, before);
  if (!derivation.ok) throw new Error(JSON.stringify(derivation.faults));
  return derivation.value;
}

const said = (job: Job): readonly string[] =>
  judge(derived(job)).map(({ verdict, because }) => `${verdict} ${because.id}`);

describe('nothing is guessed into met', () => {
  const lie = article('1', 'own', 'tilt', '', { roles: ['door-bar'], from: 'level', most: 80 });

  it('with a bar that has no role: it may be the one that is meant', () => {
    const job = demo([lie]);
    expect(said(job)).toEqual(['met measured']);
    const unnamed = updateMember(job, 'sill', { role: ' ' });
    expect(said(unnamed)).toEqual(['not-checked unnamed']);
    const [verdict] = judge(derived(unnamed));
    expect(verdict!.concerns).toEqual(['sill', "sill'"]);
    expect(verdictInWords(verdict!, derived(unnamed))).toContain('Sill bar (left) and Sill bar (right)');
  });

  it('with a bar whose place belies its role, nor where nobody has the role', () => {
    expect(said(updateMember(demo([lie]), 'harness', { role: 'door bar' }))).toEqual(['not-checked misnamed']);
    expect(said(demo([{ ...lie, roles: ['roof-rail'] }]))).toEqual(['not-checked nobody']);
  });

  it('in a frame without tubes, and says so in whole sentences', () => {
    const job = cageOf({});
    const every = article('6', 'own', 'section', '', { wall: 1 });
    const frame = derived({ ...job, rules: [{ sheet: 's', body: '', edition: '', on: '', checks: [every] }] });
    expect(judge(frame).map((verdict) => verdictInWords(verdict, frame))).toEqual([
      'There is no tube that it is about.',
    ]);
  });

  it('by an upright bar, where it is to run a way, and no angle is asked', () => {
    const way = (runs: 'rearward' | 'forward', x: number) => {
      const post = { role: 'post', at: [[x, 300, 900], [0, 300, 0]], ends: [SQUARE, SQUARE] } as const; // prettier-ignore
      const verdict = verdictOn({ bars: { post } }, article('9', 'own', 'tilt', '', { roles: ['post'], runs }));
      return `${verdict.verdict} ${verdict.value}`;
    };
    expect([way('rearward', 400), way('forward', 400)]).toEqual(['met 400', 'not-met null']);
    expect([way('rearward', 0), way('forward', 0)]).toEqual(['not-met null', 'not-met null']);
  });

  it('by half a bend, where the bar is cut in it', () => {
    const through = { role: 'tie', at: [[-300, 560, 1060], [300, 560, 1060]], ends: [SQUARE, SQUARE] } as const; // prettier-ignore
    const one = { role: 'tie', at: [[0, 600, 0], [0, 600, TOP], [0, 0, TOP], [0, -300, TOP]], cutBy: ['x'] } as const; // prettier-ignore
    const each = article('7', 'own', 'bend-count each', '', { roles: ['tie'], most: 80 });
    const job = cageOf({ bars: { hoop: { ...one, ends: [SQUARE, SQUARE] }, x: through } });
    const verdict = verdictOn(job, each);
    expect([verdict.verdict, verdict.concerns]).toEqual(['not-met', ['hoop.1', 'hoop.2']]);
    expect(verdict.value).toBeCloseTo(90, 9);
  });

  it('says which of them is nearest to the limit by the side on which it lies', () => {
    const upright = article('8', 'own', 'tilt', '', { roles: ['door-bar'], from: 'level', most: 80 });
    const frame = derived(demo([upright]));
    expect(verdictInWords(judge(frame)[0]!, frame)).toContain('the greatest of ');
  });

  it('with a count that has a most, while one without a role may be one too many', () => {
    const two = article('2', 'own', 'present', '', { roles: ['door-bar'], least: 1 });
    const unnamed = (check: RuleCheck) => said(updateMember(demo([check]), 'sill', { role: '' }));
    expect(unnamed(two)).toEqual(['met measured']);
    expect(unnamed({ ...two, most: 9 })).toEqual(['not-checked unnamed']);
  });

  it('by a tube that is to be coped to the bar and does not reach it', () => {
    const far = { fit: 'cope', against: ['hoop'], allowance: 0 } as const;
    const cage = {
      bars: { hoop: hoop(), off: { role: 'tie', at: [[-900, 0, 2 * TOP], [-500, 0, 2 * TOP]], ends: [SQUARE, far] } }, // prettier-ignore
    } as const;
    const joint = article('3', 'own', 'tilt joint', '', { roles: ['tie'], onto: ['main-hoop'], least: 30 });
    expect(verdictOn(cage, joint).because).toEqual({ id: 'no-joint', roles: ['main-hoop'] });
    const held = article('4', 'own', 'support', '', { roles: ['main-hoop'], most: 90 });
    expect(verdictOn(cage, held).because.id).toBe('unsupported');
    const free = article('5', 'own', 'straight free-length', '', { roles: ['main-hoop'], most: 2000 });
    expect(verdictOn(cage, free).verdict).toBe('not-met');
  });

  it('with a figure from memory, which is not met by it, and may be missed by it', () => {
    expect(said(demo([{ ...lie, mark: 'memory' }]))).toEqual(['not-checked from-memory']);
    expect(said(demo([{ ...lie, most: 1, mark: 'memory' }]))).toEqual(['not-met measured']);
  });

  it('without a figure, without the mass that it goes by, or for cars of another', () => {
    const { most: _most, ...bare } = lie;
    expect(said(demo([bare as RuleCheck]))).toEqual(['not-checked no-figure']);
    const light = demo([{ ...lie, massUpTo: 850 }]);
    expect(said(light)).toEqual(['not-checked no-mass']);
    expect(said(setCarMass(light, 851))).toEqual(['not-checked other-mass']);
    expect(said(setCarMass(light, 850))).toEqual(['met measured']);
  });

  it('where bends were not measured for how round they are', () => {
    expect(said(demo([article('1', 'own', 'bend-radius roundness', '', { least: 0.9 })]))).toEqual([
      'not-checked roundness-not-measured',
    ]);
  });
});

it('a gusset that cannot stand where it is put counts as none', () => {
  const apart = { role: 'tie', at: [[300, 100, 200], [700, 100, 200]] } as const; // prettier-ignore
  const leg = { towards: 'A', leg: 60 } as const;
  const gusset = {
    id: 'g',
    name: '',
    node: 'hoop-1',
    between: [{ member: 'hoop', ...leg }, { member: 'apart', ...leg }], // prettier-ignore
    thickness: 3,
    relief: 0,
    mirror: false,
    kind: 'flat',
  } as const;
  const check = article('1', 'own', 'present gussets', '', { least: 1 });
  expect(verdictOn({ bars: { hoop: hoop(), apart }, gussets: [gusset] }, check)).toMatchObject({
    verdict: 'not-met',
    value: 0,
  });
});

describe('what a person has to look at', () => {
  const job = demo([article('9', 'own', 'ask', 'Welds looked at?')]);

  it('is not checked until somebody has answered, and then as he said', () => {
    expect(said(job)).toEqual(['not-checked not-answered']);
    const answer = { says: 'not-met', by: 'the inspector', note: 'undercut at the stay', on: '2026-05-02' } as const;
    const answered = setAnswer(job, 't', 0, answer);
    expect(said(answered)).toEqual(['not-met answered']);
    const frame = derived(answered);
    expect(verdictInWords(judge(frame)[0]!, frame)).toBe(
      'Answered by the inspector on 2026-05-02: undercut at the stay.',
    );
    expect(setAnswer(answered, 't', 0, undefined)).toEqual(job);
  });

  it('and an answer beside what is measured does not change that', () => {
    const lie = article('1', 'own', 'tilt', '', { roles: ['door-bar'], from: 'level', most: 1 });
    const answer = { says: 'met', by: '', note: '', on: '' } as const;
    expect(said(setAnswer(demo([lie]), 't', 0, answer))).toEqual(['not-met measured']);
  });
});

it('an edit elsewhere leaves a verdict the very same record', () => {
  const checks = [
    article('1', 'own', 'tilt', '', { roles: ['rear-stay'], least: 30 }),
    article('2', 'own', 'section', '', { roles: ['sill-bar'], outerDiameter: 30 }),
  ];
  const job = demo(checks);
  const frame = derived(job);
  const before = judge(frame);
  const moved = derived({ ...job, name: 'Other' }, frame);
  expect(judge(moved).map((each, i) => each === before[i])).toEqual([true, true]);
  const renamed = derived(updateMember(job, 'sill', { name: 'Rocker bar' }), frame);
  expect(judge(renamed).map((each, i) => each === before[i])).toEqual([true, false]);
});

it('the tubes that Formula SAE publishes as equal come out at its figures', () => {
  // Formula SAE Rules 2026 V1.0, F.3.4.1 (read): 25 x 2.5 -> 11 321 mm4; 25.4 x 1.6 -> 8 509 mm4 and 119.6 mm2.
  expect(Math.round(secondMomentOf({ outerDiameter: 25, wall: 2.5 }))).toBe(11_321);
  expect(Math.round(secondMomentOf({ outerDiameter: 25.4, wall: 1.6 }))).toBe(8509);
  expect(sectionArea({ outerDiameter: 25.4, wall: 1.6 })).toBeCloseTo(119.6, 1);
  const sizeA = SHIPPED.find(({ sheet }) => sheet === 'fsae-2026')!.checks[0]!;
  const sizeB = { ...SHIPPED.find(({ sheet }) => sheet === 'fsae-2026')!.checks[1]!, mark: 'read' as const };
  const cage = { bars: { hoop: hoop(), stay: stay([0, 400, TOP], [-0.8, 0, -0.6]) }, radius: 100 };
  expect(verdictOn({ ...cage, outerDiameter: 25, wall: 2.5 }, sizeA).verdict).toBe('met');
  expect(verdictOn({ ...cage, outerDiameter: 25.4, wall: 1.6 }, sizeA).verdict).toBe('not-met');
  expect(verdictOn({ ...cage, outerDiameter: 25.4, wall: 1.6 }, sizeB).verdict).toBe('met');
});

describe('a sheet that is none', () => {
  const text = (rules: unknown): string => JSON.stringify({ format: 'cagewright/job', version: 1, rules });
  const faultsOf = (rules: unknown): readonly string[] => {
    const read = parseJob(text(rules));
    return read.ok ? [] : read.faults.map(faultLine);
  };

  it.each([
    [[{ sheet: 's', checks: [{ kind: 'weather' }] }], /^rules\[0\]\.checks\[0\]\.kind: not "section" or/u],
    [[{ sheet: 's', checks: [{ kind: 'tilt', most: '10' }] }], /^rules\[0\]\.checks\[0\]\.most: not a number$/u],
    [[{ sheet: 's', checks: [{ kind: 'tilt', most: 1e300 }] }], /^rules\[0\]\.checks\[0\]\.most: beyond any figure/u],
    [[{ sheet: 's', checks: 'all' }], /^rules\[0\]\.checks: not a list$/u],
    [[{ checks: [] }], /^rules\[0\]\.sheet: missing$/u],
    [[{ sheet: 's', checks: [{ kind: 'section', sizes: [{ outerDiameter: 45 }] }] }], /sizes\[0\]\.wall: missing$/u],
    [Array.from({ length: 31 }, (_, i) => ({ sheet: `s${i}` })), /^rules: more than 30/u],
  ])('%#', (rules, fault) => {
    expect(faultsOf(rules)[0]).toMatch(fault);
  });

  it('of far too many articles is refused by their number, with its place', () => {
    const million = Array.from({ length: drawn(20_000, 1_000_000) }, () => ({ kind: 'ask' }));
    expect(faultsOf([{ sheet: 's', checks: million }])[0]).toMatch(/^rules\[0\]\.checks: more than 300|larger/u);
  });

  it('with script in its words is words', () => {
    const script = '<script>alert(1)</script>';
    const read = parseJob(text([{ sheet: 's', body: script, checks: [{ kind: 'ask', text: script }] }]));
    expect(read.ok && read.job.rules[0]!.body).toBe(script);
  });
});
