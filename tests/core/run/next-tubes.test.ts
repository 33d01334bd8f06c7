/** A straight bar, then a hoop of two bends, then a bar of one: what is left of them to make, as one is made after another. */
import { describe, expect, it } from 'vitest';
import { derive, type Derived } from '../../../src/core/derive.ts';
import { beginRun, logReading } from '../../../src/core/edit/bent.ts';
import { STAGES, type MadeStage } from '../../../src/core/job/kinds/made.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { drawnTube } from '../../../src/core/run/drawn.ts';
import { nextToMake, tubesToMake, type TubeToMake } from '../../../src/core/run/next-tubes.ts';
import { setStage, tickRun } from '../../../src/core/shape/made-stage.ts';

const square = [{ fit: 'square' }, { fit: 'square' }];
const parsed = parseJob(
  JSON.stringify({
    format: 'cagewright/job',
    version: 1,
    sections: [{ id: 's', outerDiameter: 44.45, wall: 3.048, material: 'dom-1020' }],
    dies: [{ id: 'd', outerDiameter: 44.45, centrelineRadius: 152.4, clampOffset: 100, bender: { pullStep: 0.5 } }],
    nodes: Object.entries({
      a: [0, 0, 0],
      b: [0, 0, 900],
      c: [900, 0, 900],
      e: [900, 0, 0],
      f: [0, 900, 0],
      g: [0, 900, 900],
      h: [900, 900, 900],
    }).map(([id, position]) => ({ id, at: { kind: 'fixed', position } })),
    members: [
      { id: 'bar', path: ['a', 'e'], section: 's', ends: square },
      { id: 'hoop', path: ['a', 'b', 'c', 'e'], section: 's', die: 'd', ends: square },
      { id: 'brace', path: ['f', 'g', 'h'], section: 's', die: 'd', ends: square },
    ],
  }),
);
if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
const drawn = parsed.job;

const derived = (job: Job): Derived => {
  const made = derive(job);
  if (!made.ok) throw new Error(JSON.stringify(made.faults));
  return made.value;
};
const ORDER = [
  { bend: 2, front: 'A' },
  { bend: 1, front: 'A' },
] as const;
const begun = (job: Job): Job => beginRun(job, 'hoop', ORDER, drawnTube(derived(job).byId.get('hoop')!));
const ticked = (job: Job, ...steps: readonly string[]): Job =>
  steps.reduce((now, step) => tickRun(now, derived(now), 'hoop', step), job);
const read = (job: Job, bend: number): Job => logReading(job, 'hoop', bend, { pulled: 93, net: 90, on: '2026-03-02' });
const staged = (job: Job, tube: string, stage: MadeStage): Job => setStage(job, derived(job), tube, stage);
const listed = (job: Job): readonly TubeToMake[] => tubesToMake(job, derived(job).tubes);
const of = (job: Job, id: string): TubeToMake => listed(job).find(({ tube }) => tube.id === id)!;
const next = (job: Job, ...barred: readonly string[]): string | undefined =>
  nextToMake(listed(job), ({ id }) => barred.includes(id))?.tube.id;

describe('tubes to make', () => {
  it('stand in build order, whatever is done of them', () => {
    const ids = ['bar', 'hoop', 'brace'];
    expect(listed(drawn).map(({ tube }) => tube.id)).toEqual(ids);
    expect(listed(staged(begun(drawn), 'bar', 'cut')).map(({ tube }) => tube.id)).toEqual(ids);
    expect(listed(drawn).map(({ isCut, isDone, run }) => [isCut, isDone, run])).toEqual(
      ids.map(() => [false, false, null]),
    );
  });

  it('a straight one is done once it is cut, a bent one at every stage from bent on', () => {
    expect(of(staged(drawn, 'bar', 'cut'), 'bar')).toMatchObject({ isCut: true, isDone: true });
    const done = STAGES.map((stage) => of(staged(drawn, 'brace', stage), 'brace').isDone);
    expect(done).toEqual([false, true, true, true, true]);
    expect(of(staged(drawn, 'brace', 'cut'), 'brace').isCut).toBe(true);
  });

  it('a run says how many bends are made, in whatever order, and which step comes next', () => {
    const run = (job: Job) => of(job, 'hoop').run;
    expect(run(begun(drawn))).toMatchObject({ made: 0, bends: 2, next: { key: 'cut' } });
    const cut = ticked(begun(drawn), 'cut');
    expect(of(cut, 'hoop')).toMatchObject({ isCut: true, isDone: false });
    const one = read(ticked(cut, 'mark'), 2);
    expect(run(one)).toMatchObject({ made: 1, bends: 2, next: { key: 'clamp 1' } });
    const both = read(one, 1);
    expect(run(both)).toMatchObject({ made: 2, bends: 2, next: { key: 'check' } });
    expect(of(ticked(both, 'check'), 'hoop')).toMatchObject({ isCut: true, isDone: true, run: null });
  });

  it('a run of other bends than are drawn now is under way, and no step of it is next', () => {
    const members = begun(drawn).members.map((member) =>
      member.id === 'hoop' ? { ...member, path: ['a', 'b', 'c'] as typeof member.path } : member,
    );
    expect(of({ ...begun(drawn), members }, 'hoop')).toMatchObject({ isDone: false, run: { next: null, bends: 2 } });
  });
});

describe('the next one', () => {
  it('is the first that is not done', () => {
    expect(next(drawn)).toBe('bar');
    expect(next(staged(drawn, 'bar', 'cut'))).toBe('hoop');
    const all = ['hoop', 'brace'].reduce((job, id) => staged(job, id, 'bent'), staged(drawn, 'bar', 'cut'));
    expect(next(all)).toBeUndefined();
  });

  it('is the one whose run is begun before any other, also when it is barred', () => {
    expect(next(begun(drawn))).toBe('hoop');
    expect(next(begun(drawn), 'hoop')).toBe('hoop');
  });

  it('is none that cannot be made as it is drawn', () => {
    expect(next(drawn, 'bar')).toBe('hoop');
    expect(next(drawn, 'bar', 'hoop', 'brace')).toBeUndefined();
  });
});
