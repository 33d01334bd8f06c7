import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { derive } from '../../../src/core/derive.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { FAST, type Made } from '../../../src/core/stages/fast.ts';

function demo(): Job {
  const parsed = parseJob(readFileSync('public/demo.cagewright.json', 'utf8'));
  if (!parsed.ok) throw new Error(parsed.faults[0]?.message);
  return parsed.job;
}

describe('the stages of derive()', () => {
  it('come after what they need, each once', () => {
    const made = ['job'];
    for (const { name, needs } of FAST) {
      expect(made).toEqual(expect.arrayContaining([...needs]));
      expect(made).not.toContain(name);
      made.push(name);
    }
  });

  it('see no more than they say, and together make what derive() answers', () => {
    const made: Partial<Record<keyof Made, unknown>> = { job: demo() };
    for (const { name, needs, run } of FAST) {
      const seen = Object.fromEntries(needs.map((need) => [need, made[need]]));
      const outcome = run(seen as unknown as Made, undefined);
      if (!outcome.ok) expect.fail(JSON.stringify(outcome.faults));
      made[name] = outcome.value;
    }
    const derivation = derive(demo());
    if (!derivation.ok) expect.fail(JSON.stringify(derivation.faults));
    const { survey, clearances, gaps, trimGaps, findings, ...frame } = derivation.value;
    expect(made).toMatchObject({ frame, survey, clearances, gaps, trimGaps, findings });
  });

  it('hand on all of what they made before where nothing is changed', () => {
    const job = demo();
    const first = derive(job);
    if (!first.ok) expect.fail(JSON.stringify(first.faults));
    const again = derive({ ...job }, first.value);
    if (!again.ok) expect.fail(JSON.stringify(again.faults));
    for (const list of ['tubes', 'clearances', 'gaps', 'findings'] as const) {
      expect(again.value[list].length).toBeGreaterThan(0);
      again.value[list].forEach((record, i) => expect(record).toBe(first.value[list][i]));
    }
  });
});
