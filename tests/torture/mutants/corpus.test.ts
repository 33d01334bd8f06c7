import { describe, expect, it } from 'vitest';
import { derive, type Derived } from '../../../src/core/derive.ts';
import { sampleFile, withValue } from '../../core/job/sample.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { corpus } from './corpus.ts';
import { judge } from './judge.ts';
import { mutantText } from './mutate.ts';

const text = JSON.stringify(sampleFile());

function derivedSample(): Derived {
  const parsed = parseJob(text);
  const derivation = parsed.ok ? derive(parsed.job) : parsed;
  if (!derivation.ok) throw new Error('the sample derives');
  return derivation.value;
}

it.each(corpus())('$name, which failed once, fails no more', ({ wrong }) => {
  expect(wrong).toBeNull();
});

describe('the judge of mutants', () => {
  it('lets through what is right, and tells its fate', () => {
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
