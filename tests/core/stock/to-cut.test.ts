/** What a job's plan is made of. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { derive } from '../../../src/core/derive.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { planSection } from '../../../src/core/stock/of-job.ts';
import { toCut } from '../../../src/core/stock/to-cut.ts';

const parsed = parseJob(readFileSync('public/demo.cagewright.json', 'utf8'));
if (!parsed.ok) throw new Error('the demo does not open');
const demo = parsed.job;

it('a batch that is called by nothing is none: each part is in the plan once, and no stick is wanted for it', () => {
  const job: Job = {
    ...demo,
    members: demo.members.map((member, i) => {
      const { batch: _, ...bare } = member;
      return i % 2 === 0 ? { ...bare, batch: '' } : bare;
    }),
    stickSorts: [{ id: 'k1', section: demo.sections[0]!.id, length: 6096 }],
    spares: [
      { section: demo.sections[0]!.id, length: 500, count: 2, batch: '' },
      { section: demo.sections[0]!.id, length: 500, count: 1 },
    ],
  };
  const derived = derive(job);
  if (!derived.ok) throw new Error('it cannot be derived');
  const section = toCut(derived.value).find(({ sticks }) => sticks.length > 0)!;
  expect(section.parts.every(({ batch }) => batch === null)).toBe(true);
  const { plan, wanting } = planSection(section);
  const placed = plan.sticks.flatMap(({ parts }) => parts.map(({ id }) => id));
  expect(placed.toSorted()).toEqual(section.parts.map(({ id }) => id).toSorted());
  expect(wanting).toEqual([]);
});

it('more spares than a plan could be made of while one waits are refused at the door, at the record that is too much', () => {
  const spare = { section: demo.sections[0]!.id, length: 300, count: 10_000 };
  const door = (count: number) => parseJob(serialiseJob({ ...demo, spares: [spare, { ...spare, count }, spare] }));
  expect(door(0).ok).toBe(true);
  const refused = door(1);
  expect(refused.ok ? [] : refused.faults).toEqual([
    expect.objectContaining({
      place: 'stock.spares[2].count',
      message: 'more than 20000 spares, with those before it',
    }),
  ]);
});
