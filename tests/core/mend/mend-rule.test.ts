/** Keys that mend an article: each does it, brings no error, and moves no more than it has to. */
import { describe, expect, it } from 'vitest';
import { derive, type Derived } from '../../../src/core/derive.ts';
import { mendedVerdict, mendsOfVerdict } from '../../../src/core/mend/mend-rule.ts';
import type { RuleCheck } from '../../../src/core/job/kinds/rule-check.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { judge } from '../../../src/core/rules/judge.ts';
import { article } from '../../../src/core/rules/shipped/article.ts';
import { mendInWords } from '../../../src/core/words/mends.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { typedDemoText } from '../../command-line.ts';

function demoWith(check: RuleCheck): Job {
  const read = parseJob(typedDemoText());
  if (!read.ok) throw new Error('no demo');
  return { ...read.job, rules: [{ sheet: 't', body: '', edition: '', on: '', checks: [check] }] };
}

function derived(job: Job): Derived {
  const derivation = derive(job);
  if (!derivation.ok) throw new Error(JSON.stringify(derivation.faults));
  return derivation.value;
}

/** The keys' words, and what the article's verdict is with the first. */
function keys(check: RuleCheck): readonly [readonly string[], string] {
  const job = demoWith(check);
  const frame = derived(job);
  const [verdict] = judge(frame);
  expect(verdict!.verdict).toBe('not-met');
  const mends = mendsOfVerdict(job, verdict!, frame);
  const first = mends[0] && (mendedVerdict(job, mends[0], verdict!, frame) as Job);
  return [
    mends.map((mend) => mendInWords(mend, frame)),
    first === undefined ? 'none' : judge(derived(first))[0]!.verdict,
  ];
}

describe('what is offered mends', () => {
  it('a tube that is too light, by one that the job has', () => {
    const check = article('1', 'own', 'section', '', {
      roles: ['harness-bar'],
      sizes: [{ outerDiameter: 44, wall: 3 }],
    });
    expect(keys(check)).toEqual([['Make Harness bar of 1 3/4 x .120'], 'met']);
  });

  it('a diagonal that stands too far from the foot, by the least move along the hoop', () => {
    const check = article('2', 'own', 'reach foot', '', { roles: ['main-diagonal'], end: 'lower', onto: ['main-hoop'], most: 150 }); // prettier-ignore
    const [words, verdict] = keys(check);
    expect(verdict).toBe('met');
    // It stands 158.75 mm up the leg: 8.75 and a little for the leg's lean.
    expect(words[0]).toMatch(/^Move Diagonal above the right foot 0\.3[45]\d in along Main hoop, towards [AB]$/u);
  });

  it('a plate that covers too little, in whole millimetres', () => {
    const check = article('3', 'own', 'plate', '', { roles: ['rear-stay'], least: 12_000 });
    expect(keys(check)).toEqual([['Make Tower plate, 4 x 4 4.409 in x 4.409 in'], 'met']);
  });
});

it('what brings an error is not offered: the diagonal, cut by the lighter bar, would hold by a strip', () => {
  const check = article('4', 'own', 'one-piece', '', { roles: ['harness-bar'] });
  expect(keys(check)).toEqual([[], 'none']);
});

it('nothing is offered where nothing is past its limit, nor where no edit is known', () => {
  const met = demoWith(article('1', 'own', 'tilt', '', { roles: ['rear-stay'], least: 30 }));
  const frame = derived(met);
  expect(mendsOfVerdict(met, judge(frame)[0]!, frame)).toEqual([]);
  expect(keys(article('2', 'own', 'present', '', { roles: ['roof-rail'], least: 1 }))).toEqual([[], 'none']);
});
