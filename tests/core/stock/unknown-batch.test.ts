/** A tube whose section was changed keeps its batch: that none of its sticks is of it is known, and one edit drops it. */
import { expect, it } from 'vitest';
import { derive } from '../../../src/core/derive.ts';
import { dropBatch } from '../../../src/core/edit/stock.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { planSection } from '../../../src/core/stock/of-job.ts';
import { toCut } from '../../../src/core/stock/to-cut.ts';
import { isUnknownBatch } from '../../../src/core/stock/unknown-batch.ts';
import { fewTubes } from '../../few-tubes.ts';

const parsed = parseJob(fewTubes());
if (!parsed.ok) throw new Error('the job cannot be read');
const [section] = parsed.job.members.map((member) => member.section) as [string];
const job: Job = {
  ...parsed.job,
  members: parsed.job.members.map((member, i) => ({ ...member, section, batch: i === 0 ? 'Old' : 'New' })),
  stickSorts: [{ id: 'k', section, length: 7000, batch: 'New' }],
  spares: [{ section, length: 300, count: 1, batch: 'old ' }],
};

function wantingOf(of: Job) {
  const derived = derive(of);
  if (!derived.ok) throw new Error('it cannot be derived');
  const cut = toCut(derived.value).find((each) => each.section === section)!;
  return planSection(cut).wanting.map((each) => ({ ...each, isUnknown: isUnknownBatch(cut, each) }));
}

it('is told from a batch of which there are too few sticks, and is gone with one edit that leaves all others alone', () => {
  const [wanting, ...others] = wantingOf(job);
  expect(others).toEqual([]);
  expect(wanting).toMatchObject({ batch: 'Old', isUnknown: true });
  expect(wanting!.parts).toHaveLength(2);
  const few: Job = { ...job, stickSorts: [{ ...job.stickSorts[0]!, batch: 'Old', length: 310, count: 1 }] };
  expect(wantingOf(few).filter(({ batch }) => batch === 'Old')).toEqual([
    expect.objectContaining({ isUnknown: false }),
  ]);
  const next = dropBatch(job, { members: [job.members[0]!.id], spares: [0] });
  expect(wantingOf(next)).toEqual([]);
  expect(next.members.slice(1)).toEqual(job.members.slice(1));
  expect('batch' in next.members[0]! || 'batch' in next.spares[0]!).toBe(false);
  expect(dropBatch(next, { members: [job.members[0]!.id], spares: [0] })).toBe(next);
});
