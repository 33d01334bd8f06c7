/** A bar in pieces made two onto the axis of the one that runs through: in the demo, where its hoop leads and comes out another way still. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import type { Finding } from '../../../src/core/checks/types.ts';
import { derive, type Derived } from '../../../src/core/derive.ts';
import { distanceToPath } from '../../../src/core/geometry/path.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { mended, mendsOf } from '../../../src/core/mend/mends.ts';

const demo = JSON.parse(
  readFileSync(new URL('../../../tests/fixtures/demo-typed.cagewright.json', import.meta.url), 'utf8'),
);

/** Bends 1 and 2 that many degrees more and less, and the turn before bend 2. */
const bent = (off: number, turn: number): object => ({
  tube: 'hoop',
  stands: true,
  order: [1, 2, 3, 4].map((bend) => ({ bend, front: 'A' })),
  done: [],
  checks: [],
  bends: [13 + off, 76 - off, 76, 13].map((net, i) => ({
    bend: i + 1,
    pulled: net + 4,
    net,
    ...(i === 1 && { rotation: turn }),
  })),
});

function derived(job: Job): Derived {
  const result = derive(job);
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result.value;
}

it('every crossing of the demo that is too far off for a file: both parts end on the axis, now and when the hoop comes out otherwise', () => {
  const parsed = parseJob(JSON.stringify({ ...demo, bent: [bent(2, 2)] }));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  let job = parsed.job;
  const split: string[] = [];
  for (;;) {
    const frame = derived(job);
    const found = frame.findings.find((each: Finding) => each.id === 'piece/strip-holds');
    if (found === undefined) break;
    const after = mended(job, mendsOf(found, frame)[0]!, found, frame);
    if (Array.isArray(after)) throw new Error(JSON.stringify(after));
    job = after as Job;
    split.push(frame.byId.get(found.tube)!.member.id);
  }
  expect(split).toEqual(['rear-brace', 'roof-brace']);
  for (const [off, turn] of [
    [2, 2],
    [-3, 1],
    [0.5, -4],
  ] as const) {
    const again = parseJob(JSON.stringify({ ...demo, bent: [bent(off, turn)] }));
    if (!again.ok) throw new Error(JSON.stringify(again.faults));
    const frame = derived({ ...job, bent: again.job.bent });
    expect(frame.findings.filter(({ id, tube }) => id.startsWith('piece/strip') && /^(rear|roof)/u.test(tube))).toEqual(
      [],
    );
    for (const [bar, by] of [
      ['rear-brace', 'rear-diagonal'],
      ['roof-brace', 'roof-diagonal'],
    ] as const) {
      const end = frame.bars.get(bar)!.ends[1];
      expect(end.cuts.map(({ against }) => against)).toEqual([by]);
      expect(distanceToPath(frame.bars.get(by)!.path, end.position)).toBeLessThan(1e-9);
      expect(end.passedBy).toBe(false);
    }
  }
});
