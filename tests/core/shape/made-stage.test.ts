/** Tubes that are cut are held as they were cut, through whatever is drawn or measured afterwards. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { derive, type Derived } from '../../../src/core/derive.ts';
import { setStands } from '../../../src/core/edit/bent.ts';
import { movePoint } from '../../../src/core/edit/points.ts';
import { STAGES } from '../../../src/core/job/kinds/made.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { setStage, stageOf, takeBent } from '../../../src/core/shape/made-stage.ts';
import { drawnTube } from '../../../src/core/run/drawn.ts';
import { toBeBent } from '../../../src/core/run/laid-out.ts';
import { bendRun } from '../../../src/core/run/run.ts';
import { feedOf } from '../../../src/core/solve/feed.ts';
import { fabrication } from '../../../src/exports/tables/fabrication.ts';
import { findingInWords } from '../../../src/core/words/findings.ts';
import { drawn } from '../../draws.ts';
import { fixed } from '../../laws/frames.ts';
import { jobOf } from '../frame.ts';

const read = (text: string): Job => {
  const parsed = parseJob(text);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  return parsed.job;
};
const derived = (job: Job, previous?: Derived): Derived => {
  const made = derive(job, previous);
  if (!made.ok) throw new Error(JSON.stringify(made.faults));
  return made.value;
};
const demo = read(readFileSync(new URL('../../../tests/fixtures/demo-typed.cagewright.json', import.meta.url), 'utf8'));
const plan = derived(demo);

/** All that is printed of a tube: what it is made by, and not where it lies. */
function printed(frame: Derived, tube: string): string {
  const { corners: _, ends, ...made } = fabrication(frame).tubes.find(({ id }) => id === tube)!;
  return JSON.stringify({ ...made, ends: ends.map(({ direction: _direction, reference: _reference, ...end }) => end) });
}

const moves = fc.array(
  fc.tuple(fc.nat(demo.points.length - 1), fc.tuple(...[0, 1, 2].map(() => fc.integer({ min: -40, max: 40 })))),
  {
    minLength: 1,
    maxLength: 4,
  },
);

describe('how far a tube is made', () => {
  it('holds it: whatever is measured anew, no figure of it changes by a byte', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(plan.tubes.length - 1), fc.constantFrom(...STAGES)), { minLength: 1, maxLength: 8 }),
        moves,
        (stages, measured) => {
          let frame = plan;
          for (const [index, stage] of stages) {
            frame = derived(setStage(frame.job, frame, plan.tubes[index]!.id, stage), frame);
          }
          const held = frame.job.made.map(({ tube }) => ({ tube, was: printed(frame, tube) }));
          // Marking a tube as cut is no change of it; rounding of its neighbours' lines stays below what is printed.
          const job = measured.reduce((before, [index, by]) => {
            const { id, position } = before.points[index]!;
            return movePoint(before, id, [
              position[0] + by[0]! / 10,
              position[1] + by[1]! / 10,
              position[2] + by[2]! / 10,
            ]);
          }, frame.job);
          const now = derived(job, frame);
          for (const { tube, was } of held) expect(printed(now, tube), tube).toBe(was);
          // Read back from its file it is the same, and so it is derived from nothing.
          const again = derived(read(serialiseJob(now.job)));
          for (const { tube, was } of held) expect(printed(again, tube), tube).toBe(was);
          expect(now.tubes).toStrictEqual(derived(now.job).tubes);
        },
      ),
      fixed(drawn(2, 100)),
    );
  });

  it('changes nothing by being marked', () => {
    for (const stage of ['cut', 'welded'] as const) {
      let frame = plan;
      for (const { id } of plan.tubes) frame = derived(setStage(frame.job, frame, id, stage), frame);
      for (const tube of frame.tubes) {
        const before = plan.byId.get(tube.id)!;
        expect(stageOf(frame.job, tube.id)).toBe(stage);
        expect(tube.corners).toEqual(before.corners);
        expect(tube.blankLength).toBeCloseTo(before.blankLength, 6);
        tube.ends.forEach((end, which) => {
          const was = before.ends[which as 0 | 1];
          expect(end.fit).toBe(was.fit);
          end.cuts.forEach((cut, i) => {
            expect(cut.against).toBe(was.cuts[i]!.against);
            for (const key of ['includedAngle', 'clocking', 'axisOffset'] as const)
              expect(cut[key], `${tube.id} ${key}`).toBeCloseTo(was.cuts[i]![key], 6);
          });
          end.outer.forEach((trim, phi) => {
            if (Number.isNaN(trim)) expect(was.outer[phi]).toBeNaN();
            else expect(trim).toBeCloseTo(was.outer[phi]!, 4);
          });
        });
      }
    }
  });

  it('is set back to drawn, and the tube follows the frame again', () => {
    const marked = derived(setStage(plan.job, plan, plan.tubes[3]!.id, 'notched'));
    const back = setStage(marked.job, marked, plan.tubes[3]!.id, null);
    expect(serialiseJob(back)).toBe(serialiseJob(demo));
    expect(setStage(plan.job, plan, 'no such tube', 'cut')).toBe(plan.job);
    expect(setStage(marked.job, marked, plan.tubes[3]!.id, 'notched')).toBe(marked.job);
  });
});

describe('what is cut beside the frame as it is now', () => {
  /** A straight bar between two posts, and the posts moved apart, turned, or along: what a person finds with the bar in hand. */
  const posts = (right: readonly [number, number, number], made: readonly object[] = []) =>
    jobOf({
      nodes: {
        a: [0, 0, 0],
        b: [0, 0, 1000],
        c: [...right],
        d: [right[0], right[1], 1000],
        bar: [0, 0, 500],
        end: [right[0], right[1], 500],
      },
      sections: [{ id: 's', outerDiameter: 40, wall: 2 }],
      members: [
        { id: 'left', section: 's', path: ['a', 'b'] },
        { id: 'right', section: 's', path: ['c', 'd'] },
        { id: 'bar', section: 's', path: ['bar', 'end'] },
      ],
      made,
    });
  const cutBar = setStage(posts([0, 800, 0]), derived(posts([0, 800, 0])), 'bar', 'notched').made;
  const misfitsOf = (frame: Derived) =>
    frame.findings.flatMap((finding) => (finding.id === 'made/end-misfit' ? [finding] : []));

  it('is nothing while nothing moves', () => {
    expect(derived(posts([0, 800, 0], cutBar)).findings.filter(({ id }) => id.startsWith('made/'))).toEqual([]);
  });

  it('is the whole difference at end B of a straight tube, long or short', () => {
    const [short, ...none] = misfitsOf(derived(posts([0, 803, 0], cutBar)));
    expect(none).toEqual([]);
    expect(short).toMatchObject({ tube: 'bar', end: 'B', severity: 'warning', left: 0 });
    expect(short!.gap).toBeCloseTo(3, 6);
    expect(short!.long).toBeCloseTo(-3, 6);
    const [long] = misfitsOf(derived(posts([0, 796, 0], cutBar)));
    expect(long!.long).toBeCloseTo(4, 6);
    expect(long!.gap).toBeCloseTo(0, 6);
  });

  it('is a gap of one side, ground off on the other, where the run tube leans: by its angle', () => {
    // Two posts that lean by t against a square cope of equal tubes: s = R (cos phi cos a + |cos phi|) / sin a, so of a square one
    // R |cos phi|, and the difference at phi = 0 and 180 is R (1 + cos a) / sin a - R and R (1 - cos a) / sin a - R.
    const lean = (degrees: number) => {
      const shift = 500 * Math.tan((degrees * Math.PI) / 180);
      const job = jobOf({
        nodes: {
          a: [0, 0, 0],
          b: [0, 0, 1000],
          c: [0, 800 - shift, 0],
          d: [0, 800 + shift, 1000],
          bar: [0, 0, 500],
          end: [0, 800, 500],
        },
        sections: [{ id: 's', outerDiameter: 40, wall: 2 }],
        members: [
          { id: 'left', section: 's', path: ['a', 'b'] },
          { id: 'right', section: 's', path: ['c', 'd'] },
          { id: 'bar', section: 's', path: ['bar', 'end'] },
        ],
        made: cutBar,
      });
      return misfitsOf(derived(job));
    };
    const [b] = lean(4);
    const a = ((90 - 4) * Math.PI) / 180;
    const deep = (20 * (1 + Math.cos(a))) / Math.sin(a) - 20;
    const high = (20 * (1 - Math.cos(a))) / Math.sin(a) - 20;
    expect(b).toMatchObject({ end: 'B' });
    expect(b!.long).toBeCloseTo(deep, 6);
    expect(b!.gap).toBeCloseTo(-high, 6);
    expect((b!.turned! * 180) / Math.PI).toBeCloseTo(4, 6);
  });

  it('is told in words', () => {
    const frame = derived(posts([0, 803, 0], cutBar));
    expect(findingInWords(misfitsOf(frame)[0]!, frame)).toBe(
      'bar, end B, is cut for the frame as it was; it leaves a gap of up to 3.0 mm.',
    );
  });
});

it('a tube that is taken over from a tape is bent, in a run that is all done, and can lead', () => {
  const hoop = plan.byId.get('hoop')!;
  const order = hoop.bends.map((_, i) => ({ bend: i + 1, front: 'A' as const }));
  const bends = hoop.bends.map(({ angle, start }, i) => {
    const net = (angle * 180) / Math.PI + 1;
    return { bend: i + 1, pulled: net, net, start, fitted: true };
  });
  const job = takeBent(demo, plan, { tube: 'hoop', order, bends, checks: [], drawn: drawnTube(hoop) });
  expect(stageOf(job, 'hoop')).toBe('bent');
  expect(job.pulls).toBe(demo.pulls);
  const made = derived(job).byId.get('hoop')!;
  const { steps, current } = bendRun(toBeBent(made, job.bent[0]), job.bent[0]!, feedOf(job, made));
  expect(current).toBe(steps.length);
  const led = derived(setStands(job, 'hoop', true)).byId.get('hoop')!;
  led.bends.forEach(({ angle, radius }, i) => {
    expect((angle * 180) / Math.PI).toBeCloseTo(bends[i]!.net, 9);
    expect(radius).toBeCloseTo(hoop.bends[i]!.radius, 9);
  });
});
