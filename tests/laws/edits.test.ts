import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  beginRun,
  keepBend,
  logReading,
  removeRun,
  setBentRotation,
  setBentStraight,
  setCheck,
  tickStep,
  untickStep,
} from '../../src/core/edit/bent.ts';
import { addObstacle, changeObstacle, clearBender, removeObstacle, setBender } from '../../src/core/edit/dies.ts';
import { addEnvelope, updateEnvelope } from '../../src/core/edit/envelopes.ts';
import {
  addMember,
  insertPathNode,
  moveMember,
  removeMember,
  removePathNode,
  setEnd,
} from '../../src/core/edit/members.ts';
import { addNode, moveFixedNode, removeNode, setOnDistance } from '../../src/core/edit/nodes.ts';
import { addPoint, movePoint, removePoint } from '../../src/core/edit/points.ts';
import type { Edited } from '../../src/core/edit/records.ts';
import { addSection, removeSection, setStick } from '../../src/core/edit/sections.ts';
import { applyDiff, diffJobs, invertDiff } from '../../src/core/job/diff.ts';
import { parseJob } from '../../src/core/job/parse.ts';
import { serialiseJob } from '../../src/core/job/serialise.ts';
import type { BendStep, DrawnTube, Job, Obstacle } from '../../src/core/job/types.ts';
import { COLLECTIONS } from '../../src/core/job/validate.ts';
import { sampleFile } from '../core/job/sample.ts';
import { deepFreeze } from './jobs.ts';

/** Picks the record that a random number falls on. */
const pick = <T>(items: readonly T[], at: number): T => items[at % items.length]!;

const ORDER: readonly BendStep[] = [
  { bend: 2, front: 'A' },
  { bend: 1, front: 'B' },
];
const DRAWN: DrawnTube = { legs: [1100, 1000, 1100], angles: [84, 84], rotations: [0, 0] };
const WALL: Obstacle = { name: 'Wall', kind: 'plane', point: [0, 2000, 0], normal: [0, -1, 0] };
const orNone = (value: number): number | null => (value % 3 === 0 ? null : value / 10);

/** An edit, from a job and two random numbers. */
const EDITS: readonly ((job: Job, a: number, b: number) => Edited)[] = [
  (job, a) => addPoint(job, `Point ${a}`, [a, 0, 0]),
  (job, a, b) => movePoint(job, pick(job.points, a).id, [b, a, 0]),
  (job, a) => removePoint(job, pick(job.points, a).id),
  (job, a, b) => addNode(job, 'New', { kind: 'fixed', position: [a, b, 0] }),
  (job, a, b) => moveFixedNode(job, `${pick(job.nodes, a).id}${b % 2 === 0 ? "'" : ''}`, [a, b, 0]),
  (job, a, b) => setOnDistance(job, pick(job.nodes, a).id, b),
  (job, a) => removeNode(job, pick(job.nodes, a).id),
  (job, a, b) => addMember(job, { name: 'New', path: [pick(job.nodes, a).id, pick(job.nodes, b).id], section: 'main' }),
  (job, a, b) => insertPathNode(job, pick(job.members, a).id, b % 3, `${pick(job.nodes, b).id}'`),
  (job, a, b) => removePathNode(job, pick(job.members, a).id, b % 2),
  (job, a, b) => moveMember(job, pick(job.members, a).id, b % 5),
  (job, a, b) => setEnd(job, pick(job.members, a).id, b % 2 === 0 ? 0 : 1, { fit: 'square', allowance: b }),
  (job, a) => (job.members.length > 1 ? removeMember(job, pick(job.members, a).id) : job),
  (job) => addSection(job, () => 'New'),
  (job, a) => removeSection(job, pick(job.sections, a).id),
  (job) => addEnvelope(job),
  (job, a, b) => updateEnvelope(job, pick(job.envelopes, a).id, { gap: b }),
  (job, a) => setStick(job, pick(job.sections, a).id, a % 3 === 0 ? null : a),
  (job, a) => setBender(job, 'd1', { planeHeight: a }),
  (job) => clearBender(job, 'd1'),
  (job) => addObstacle(job, 'd1', WALL),
  (job, a) => changeObstacle(job, 'd1', a % 4, WALL),
  (job, a) => removeObstacle(job, 'd1', a % 4),
  (job) => (job.members.some(({ id }) => id === 'hoop') ? beginRun(job, 'hoop', ORDER, DRAWN) : job),
  (job) => removeRun(job, 'hoop'),
  (job, a) => tickStep(job, 'hoop', `clamp ${a % 3}`),
  (job, a) => untickStep(job, 'hoop', `clamp ${a % 3}`),
  (job, a, b) => logReading(job, 'hoop', (a % 2) + 1, { pulled: 90 + (b % 9), net: 88, on: '' }),
  (job, a, b) => keepBend(job, 'hoop', (a % 2) + 1, b % 2 === 0),
  (job, a, b) => setBentRotation(job, 'hoop', (a % 2) + 1, orNone(b)),
  (job, a, b) => setBentStraight(job, 'hoop', (a % 2) + 1, orNone(b)),
  (job, a, b) => setCheck(job, 'hoop', a % 2 === 0 ? 'chord' : 'width', orNone(b)),
];

const edit = fc.tuple(fc.constantFrom(...EDITS), fc.nat(1000), fc.nat(1000));

describe('any run of edits', () => {
  it('leaves what it began with alone, keeps what it does not touch, and ends in a job that a file holds', () => {
    const start = parseJob(JSON.stringify(sampleFile()));
    if (!start.ok) throw new Error('the sample is a job');
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 12 }), (edits) => {
        let job = deepFreeze(structuredClone(start.job));
        for (const [run, a, b] of edits) {
          const answer = run(job, a, b);
          if (Array.isArray(answer)) {
            expect(answer.length).toBeGreaterThan(0);
            continue;
          }
          const next = deepFreeze(answer as Job);
          const diff = diffJobs(job, next);
          expect(applyDiff(job, diff)).toEqual(next);
          expect(applyDiff(next, invertDiff(diff))).toEqual(job);
          for (const collection of COLLECTIONS) {
            const named = new Set(diff.collections[collection]?.records.map(({ key }) => key));
            for (const record of next[collection]) {
              if (!named.has(record.id)) expect(record).toBe(job[collection].find(({ id }) => id === record.id));
            }
          }
          job = next;
        }
        expect(parseJob(serialiseJob(job))).toEqual({ ok: true, job });
      }),
      { seed: 41, numRuns: 600 },
    );
  });
});
