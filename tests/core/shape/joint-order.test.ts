/** The joint at a node: what is there, in which order, and two that change places. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Derived } from '../../../src/core/derive.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { fitBefore, whyNotBefore } from '../../../src/core/shape/fit-before.ts';
import { isCopedTo, isEnd, jointAt } from '../../../src/core/shape/joint-order.ts';
import { drawn } from '../../draws.ts';
import { fixed } from '../../laws/frames.ts';
import { jobOf } from '../frame.ts';
import { again, read, solved } from './sides.ts';

const DEMO = read(readFileSync('public/demo.cagewright.json', 'utf8'));

const inWords = (frame: Derived, node: string): string[] =>
  jointAt(frame, node).map((one) => {
    if (!isEnd(one)) return `${one.bar.id} through`;
    const end = one.bar.ends[one.which];
    return `${one.bar.id} ${'AB'[one.which]} ${end.cuts.map(({ against }) => against).join(' ')}`;
  });

/** Every pair of which one is coped to the other: who they are, and the job with the first before the second. */
function changes(job: Job, frame: Derived, node: string) {
  const joint = jointAt(frame, node);
  return joint.flatMap((one) =>
    joint.flatMap((other) =>
      isEnd(one) && isEnd(other) && one !== other && whyNotBefore(one, other) === null
        ? [{ one, other, job: again(fitBefore(job, frame, one, other)) }]
        : [],
    ),
  );
}

/** In the frame now: whether the end of the one is coped to the other. */
function copedNow(frame: Derived, node: string, one: string, other: string): boolean {
  const joint = jointAt(frame, node);
  const [a, b] = [one, other].map((id) => joint.find(({ bar }) => bar.id === id)!);
  return isEnd(a!) && isCopedTo(a, b!);
}

describe('the joint at a node', () => {
  it('of the demo, at the top of the stay: the hoop runs through, stay and diagonal end there', () => {
    expect(inWords(solved(DEMO), 'stay-top')).toEqual(['hoop through', 'stay A hoop', 'diagonal B hoop stay']);
    expect(inWords(solved(DEMO), "stay-top'")).toEqual(['hoop through', "stay' A hoop"]);
  });

  it('is empty for a node that is not there', () => expect(jointAt(solved(DEMO), 'none')).toEqual([]));

  it('takes in what ends at the place on a node of another name, and each comes after what it is coped to', () => {
    const job = jobOf({
      nodes: { n: [0, 0, 500], m: [0, 0, 500.5], a: [800, 0, 0], b: [0, 700, 200], c: [-600, -500, 900] },
      members: [
        { id: 'late', name: 'late', path: ['c', 'm'], ends: [{ fit: 'auto' }, { fit: 'cope', against: ['early'] }] },
        { id: 'early', name: 'early', path: ['n', 'a'], ends: [{ fit: 'square' }, { fit: 'auto' }] },
        { id: 'third', name: 'third', path: ['b', 'n'] },
      ],
    });
    expect(inWords(solved(job), 'n')).toEqual(['early A ', 'late B early', 'third B late early']);
  });
});

describe('two that change places', () => {
  it('in the demo: the diagonal before the stay, which is coped to it from then on; and back, as it was', () => {
    const frame = solved(DEMO);
    const [change] = changes(DEMO, frame, 'stay-top');
    expect([change!.one.bar.id, change!.other.bar.id]).toEqual(['diagonal', 'stay']);
    const after = solved(change!.job);
    expect(inWords(after, 'stay-top')).toEqual(['hoop through', 'diagonal B hoop', 'stay A hoop diagonal']);
    const [back] = changes(change!.job, after, 'stay-top');
    expect(serialiseJob(back!.job)).toBe(serialiseJob(DEMO));
  });

  it('not where one runs through, is not coped to the other, is its own twin, or stands flat', () => {
    const job = jobOf({
      nodes: { n: [0, 0, 500], a: [800, 10, 0], b: [0, 700, 200], c: [-600, 300, 900] },
      members: [
        { id: 'flat', name: 'flat', path: ['n', 'a'], ends: [{ fit: 'plate', normal: [0, 0, 1] }, { fit: 'auto' }] },
        { id: 'pair', name: 'pair', path: ['b', 'n'], mirror: true },
        { id: 'free', name: 'free', path: ['c', 'n'], ends: [{ fit: 'auto' }, { fit: 'square' }] },
      ],
    });
    const joint = jointAt(solved(job), 'n');
    const why = (a: string, b: string) =>
      whyNotBefore(
        joint.find(({ bar }) => bar.id === a)!,
        joint.find(({ bar }) => bar.id === b)!,
      );
    expect(why('pair', 'flat')).toBe('cut-flat');
    expect(why('free', 'pair')).toBe('not-coped');
    expect(why('pair', "pair'")).toBe('one-member');
    const [hoop, stay] = jointAt(solved(DEMO), 'stay-top');
    expect(whyNotBefore(stay!, hoop!)).toBe('runs-through');
  });

  /** A joint of three to five bars at a place, each found or named, some mirrored; now and then on the end of one of them. */
  const jobs = fc
    .record({
      bars: fc.array(
        fc.record({
          away: fc.tuple(...[0, 1, 2].map(() => fc.integer({ min: -700, max: 700 }))),
          mirror: fc.boolean(),
          named: fc.boolean(),
        }),
        { minLength: 3, maxLength: 5 },
      ),
      onFirst: fc.boolean(),
      inMiddle: fc.boolean(),
    })
    .map(({ bars, onFirst, inMiddle }) => {
      const [x, y, z] = [120.5, inMiddle ? 0 : 333.25, 610];
      const fars = bars.map(({ away }, i) => [`far${i}`, [x + away[0]!, y + away[1]!, z + away[2]! + 60 * i]] as const);
      return jobOf({
        nodes: {
          n: [x, y, z],
          ...(onFirst && { m: { kind: 'on', member: 'b0', from: 'end', distance: 0 } }),
          ...Object.fromEntries(fars),
        },
        members: bars.map(({ mirror, named }, i) => ({
          id: `b${i}`,
          name: `bar ${i}`,
          path: [`far${i}`, i > 0 && onFirst ? 'm' : 'n'],
          mirror,
          ends: [
            { fit: 'auto' },
            named && i > 0 ? { fit: 'cope', against: Array.from({ length: i }, (_, k) => `b${k}`) } : { fit: 'auto' },
          ],
        })),
      });
    });

  it('of random joints: the one is not coped to the other any more, and the other is to the one', () => {
    let tried = 0;
    fc.assert(
      fc.property(jobs, (job) => {
        const frame = solved(job);
        for (const node of ['n', "n'"]) {
          for (const change of changes(job, frame, node)) {
            const [one, other] = [change.one.bar.id, change.other.bar.id];
            const after = solved(change.job);
            expect(copedNow(after, node, one, other), `${one} to ${other}`).toBe(false);
            expect(copedNow(after, node, other, one), `${other} to ${one}`).toBe(true);
            tried += 1;
          }
        }
      }),
      fixed(drawn(3, 300)),
    );
    expect(tried).toBeGreaterThan(10);
  });
});
