/** Revision codes: the same for the same printed figures, another where one of them changes; and waste paper by them. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { derive, type Derived } from '../../../src/core/derive.ts';
import { movePoint } from '../../../src/core/edit/points.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { changedTubes } from '../../../src/core/checks/changed-tubes.ts';
import { setStage } from '../../../src/core/shape/made-stage.ts';
import { wastePaper, withPrinted } from '../../../src/core/shape/printed.ts';
import { jobRevision, revisionOf } from '../../../src/core/solve/revision.ts';

const parsed = parseJob(
  readFileSync(new URL('../../../tests/fixtures/demo-typed.cagewright.json', import.meta.url), 'utf8'),
);
if (!parsed.ok) throw new Error('the demo does not parse');
const demo = parsed.job;
const derived = (job: Job, previous?: Derived): Derived => {
  const made = derive(job, previous);
  if (!made.ok) throw new Error(JSON.stringify(made.faults));
  return made.value;
};
const plan = derived(demo);
const codes = (frame: Derived) => new Map(frame.tubes.map((tube) => [tube.id, revisionOf(frame.job, tube)]));
const moved = (by: number): Derived => {
  const { id, position } = demo.points.find((point) => point.id === 'b-roof-l')!;
  return derived(movePoint(demo, id, [position[0], position[1], position[2] + by]), plan);
};

describe('a revision', () => {
  it('is four signs that cannot be misread for one another', () => {
    for (const code of codes(plan).values()) expect(code).toMatch(/^[0-9A-HJKMNP-TV-Z]{4}$/u);
    expect(jobRevision(plan)).toMatch(/^[0-9A-HJKMNP-TV-Z]{4}$/u);
    expect(new Set(codes(plan).values()).size).toBe(plan.tubes.length);
  });

  it('is the same from scratch and from what was derived before', () => {
    expect(codes(derived(demo, moved(5)))).toEqual(codes(plan));
    expect(codes(moved(0))).toEqual(codes(plan));
  });

  it('changes with the tools that recipes go by, and is the one of no tools where the job has none', () => {
    const tools = { ...demo.tools!, saws: demo.tools!.saws.map((saw) => ({ ...saw, reach: 30 })) };
    const others = codes(derived({ ...demo, tools }, plan));
    for (const [tube, code] of codes(plan)) expect(others.get(tube), tube).not.toBe(code);
    const { tools: _tools, ...without } = demo;
    expect(codes(derived(without))).toEqual(codes(derived({ ...demo, tools: { notchers: [], saws: [] } })));
  });

  it('changes with what is printed, and with nothing else', () => {
    const now = moved(2);
    const changed = new Set(changedTubes(plan, now).map(({ tube }) => tube));
    expect(changed.size).toBeGreaterThan(5);
    for (const [tube, code] of codes(now)) {
      // What changes by more than 0.05 mm has another code; what stays the same object has the same.
      if (changed.has(tube)) expect(code, tube).not.toBe(codes(plan).get(tube));
      if (now.byId.get(tube) === plan.byId.get(tube)) expect(code, tube).toBe(codes(plan).get(tube));
    }
    expect(jobRevision(now)).not.toBe(jobRevision(plan));
  });

  it('of a tube that is held stays', () => {
    const cut = derived(setStage(demo, plan, 'stay', 'cut'), plan);
    const { id, position } = demo.points.find((point) => point.id === 'b-roof-l')!;
    const now = derived(movePoint(cut.job, id, [position[0], position[1], position[2] + 4]), cut);
    expect(revisionOf(now.job, now.byId.get('stay')!)).toBe(revisionOf(cut.job, cut.byId.get('stay')!));
  });
});

describe('waste paper', () => {
  it('is what was printed of tubes that have changed since, or are gone', () => {
    const printed = withPrinted(demo, plan, '2026-05-04');
    expect(printed.printed).toHaveLength(plan.tubes.length);
    expect(withPrinted(printed, plan, '2026-05-05')).toBe(printed);
    expect(wastePaper(derived(printed))).toEqual([]);
    const { id, position } = demo.points.find((point) => point.id === 'b-roof-l')!;
    const now = derived(movePoint(printed, id, [position[0], position[1], position[2] + 2]));
    const waste = wastePaper(now);
    const otherwise = now.tubes.filter((tube) => codes(now).get(tube.id) !== codes(plan).get(tube.id));
    expect(waste.map(({ tube }) => tube!.id)).toEqual(otherwise.map((tube) => tube.id));
    for (const { tube, longer } of waste)
      expect(longer).toBeCloseTo(tube!.blankLength - plan.byId.get(tube!.id)!.blankLength, 6);
    // Printed again only what has changed bears the new day.
    const again = withPrinted(now.job, now, '2026-05-06');
    expect(again.printed.filter(({ on }) => on === '2026-05-06')).toHaveLength(waste.length);
    const gone = {
      ...printed,
      printed: [...printed.printed, { tube: 'old', revision: '0000', cutLength: 900, on: '2026-01-01' }],
    };
    expect(wastePaper(derived(gone)).map(({ printed: { tube }, revision }) => [tube, revision])).toEqual([
      ['old', null],
    ]);
  });
});
