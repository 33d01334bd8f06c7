import { describe, expect, it } from 'vitest';
import { changeKind } from '../../../src/core/edit/changeKind.ts';
import { derive } from '../../../src/core/derive.ts';
import { length, subtract } from '../../../src/core/geometry/vector.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import type { Job, Place } from '../../../src/core/job/types.ts';
import { sampleFile } from '../job/sample.ts';

const parsed = parseJob(JSON.stringify(sampleFile()));
if (!parsed.ok) throw new Error('the sample is a job');
const { job } = parsed;

function solved(of: Job) {
  const derived = derive(of);
  if (!derived.ok) throw new Error(derived.faults.map(({ message }) => message).join());
  return derived.value;
}

const KINDS: readonly Place['kind'][] = ['fixed', 'point', 'on', 'between', 'ray'];
const cases = job.nodes.flatMap(({ id }) => KINDS.map((kind) => [id, kind] as const));

describe('changeKind', () => {
  it.each(cases)('%s as %s can be solved, and stands where it stood', (id, kind) => {
    const before = solved(job);
    const result = changeKind(job, before, id, kind);
    const at = result.nodes.find((node) => node.id === id)!.at;
    if (at.kind !== kind) return expect(result).toBe(job);
    const moved = length(subtract(solved(result).nodes.get(id)!, before.nodes.get(id)!));
    if (kind === 'between') expect(moved).toBeLessThan(1000);
    else expect(moved).toBeLessThan(1e-6);
  });

  it('gives the same job when there is nothing to stand on', () => {
    const bare: Job = { ...job, points: [], bodyLines: [], members: [], envelopes: [], nodes: [job.nodes[0]!] };
    for (const kind of KINDS) expect(changeKind(bare, solved(bare), 'foot', kind)).toBe(bare);
  });
});
