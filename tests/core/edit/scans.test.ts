/** Edits of scans. */
import { describe, expect, it } from 'vitest';
import { movePoint } from '../../../src/core/edit/points.ts';
import {
  addPointFromScan,
  addScan,
  anotherFile,
  pairOnScan,
  removeScan,
  unpairOnScan,
  updateScan,
} from '../../../src/core/edit/scans.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { sampleFile } from '../job/sample.ts';

function read(text: string): Job {
  const parsed = parseJob(text);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  return parsed.job;
}

const JOB = read(JSON.stringify(sampleFile()));
const [SCAN] = JOB.scans as readonly [Job['scans'][number]];

describe('a scan', () => {
  it('is added under an id of its own, and changed without touching the others', () => {
    const { id: _, ...rest } = SCAN;
    const two = addScan(JOB, { ...rest, name: 'Other' });
    expect(two.scans.map(({ id }) => id)).toEqual(['scan1', 'scan2']);
    const hidden = updateScan(two, 'scan2', { shown: false });
    expect(hidden.scans[0]).toBe(two.scans[0]);
    expect(hidden.scans[1]!.shown).toBe(false);
    expect(updateScan(hidden, 'scan2', { shown: false })).toBe(hidden);
    expect(read(serialiseJob(hidden))).toEqual(hidden);
  });

  it('has another file in its place, with what of it was taken', () => {
    const file = { data: 'other', file: 'other.ply', kind: 'points', count: 40 } as const;
    const third = anotherFile(JOB, 'scan1', { ...file, every: 3 });
    expect(third.scans[0]).toEqual({ ...SCAN, ...file, every: 3 });
    const whole = anotherFile(third, 'scan1', file);
    expect(whole.scans[0]).not.toHaveProperty('every');
    expect(whole.scans[0]).toMatchObject(file);
    expect(anotherFile(whole, 'scan1', file)).toBe(whole);
  });

  it('has one place for a point: the last one given', () => {
    const paired = pairOnScan(pairOnScan(JOB, 'scan1', { at: [1, 2, 3], point: 'post' }), 'scan1', {
      at: [4, 5, 6],
      point: 'post',
    });
    expect(paired.scans[0]!.pairs).toEqual([...SCAN.pairs, { at: [4, 5, 6], point: 'post' }]);
    expect(unpairOnScan(paired, 'scan1', 'post').scans[0]!.pairs).toEqual(SCAN.pairs);
    expect(unpairOnScan(JOB, 'scan1', 'post')).toBe(JOB);
  });

  it('gives points that say where they are from and how sure; measured anew, a point does not any more', () => {
    const picked = addPointFromScan(JOB, 'scan1', 'Tunnel', [100, 0, 250.5]);
    const point = picked.points.at(-1)!;
    expect(point).toEqual({
      id: point.id,
      name: 'Tunnel',
      accuracy: 3,
      position: [100, 0, 250.5],
      from: { scan: 'scan1' },
    });
    expect(read(serialiseJob(picked))).toEqual(picked);
    expect(movePoint(picked, point.id, [100, 0, 250]).points.at(-1)).toEqual({
      id: point.id,
      name: 'Tunnel',
      position: [100, 0, 250],
    });
    expect(movePoint(picked, point.id, [100, 0, 250.5])).toBe(picked);
    expect(addPointFromScan(JOB, 'nowhere', 'Tunnel', [0, 0, 0])).toBe(JOB);
  });

  it('that goes leaves its points, as accurate as they are', () => {
    const without = removeScan(JOB, 'scan1');
    expect(without.scans).toEqual([]);
    expect(without.points.find(({ id }) => id === 'post')).toEqual({
      id: 'post',
      name: 'Post',
      accuracy: 3,
      position: [-40, 600, 900],
    });
    expect(without.points[0]).toBe(JOB.points[0]);
    expect(read(serialiseJob(without))).toEqual(without);
  });
});
