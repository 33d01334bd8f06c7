import { describe, expect, it } from 'vitest';
import { derive, type Derived } from '../../../src/core/derive.ts';
import { sampleFile, withValue } from '../../core/job/sample.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { corpus, corpusText } from './corpus.ts';
import { judge } from './judge.ts';
import { mutantText } from './mutate.ts';

const text = JSON.stringify(sampleFile());

function derived(job: string): Derived {
  const parsed = parseJob(job);
  const derivation = parsed.ok ? derive(parsed.job) : parsed;
  if (!derivation.ok) throw new Error('derives');
  return derivation.value;
}
const derivedSample = (): Derived => derived(text);

it.each(corpus())('$name comes to what it should', ({ wrong }) => {
  expect(wrong).toBeNull();
});

describe('the corpus', () => {
  it('has a name of 16 000 letters kept in the job and shortened on the tube', () => {
    const long = corpusText('name-of-16000-letters.json');
    const parsed = parseJob(long);
    expect(parsed.ok && parsed.job.members[0]!.name.length).toBe(16_000);
    expect(derived(long).tubes[0]!.name).toBe(`${'N'.repeat(199)}…`);
    const whole = derived(corpusText('name-of-200-letters.json'));
    expect(whole.tubes[0]!.name).toBe('N'.repeat(200));
  });

  it('has ids nearly equal, each with the clearances it has under any other', () => {
    const near = corpusText('ids-nearly-equal.json');
    const job = JSON.parse(near) as Record<'members' | 'envelopes', { id: string }[]>;
    for (const list of ['members', 'envelopes'] as const)
      job[list].forEach((record, i) => {
        record.id = `${list}${i}`;
      });
    const millimetres = (each: Derived): number[] => each.clearances.map(({ distance }) => distance);
    const found = millimetres(derived(near));
    expect(found).toEqual(millimetres(derived(JSON.stringify(job))));
    expect(found).toHaveLength(25);
  });
});

describe('the judge of mutants', () => {
  it('lets through what is right, and names its fate', () => {
    const before = derivedSample();
    expect(judge(text, before, true)).toEqual({ fate: 'derived' });
    expect(judge('{', before, true)).toEqual({ fate: 'refused' });
    const looped = withValue(sampleFile(), ['nodes', 5, 'at', 'nodes'], ['mid', 'mid']);
    expect(judge(JSON.stringify(looped), before, true)).toEqual({ fate: 'no frame' });
  });

  it('tells a frame that comes out otherwise from what was there before', () => {
    const before = derivedSample();
    const tampered = before.tubes.map((tube) => ({ ...tube, mass: tube.mass + 1 }));
    const other = { ...before, tubes: tampered, byId: new Map(tampered.map((tube) => [tube.id, tube])) };
    expect(judge(text, other, false)).toEqual({ wrong: expect.stringContaining('derived otherwise') });
  });
});

it('mutants come from their seed and number alone', () => {
  const jobs = [sampleFile()];
  const some = Array.from({ length: 50 }, (_, index) => mutantText(jobs, 7, index));
  expect(Array.from({ length: 50 }, (_, index) => mutantText(jobs, 7, 49 - index)).toReversed()).toEqual(some);
  expect(new Set(some).size).toBeGreaterThan(40);
});
