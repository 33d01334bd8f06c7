/** Edits of scans: what a job knows of one, the pairs that it is laid by, and points that are picked on it. Its data are not the job's. */
import type { Vec3 } from '../geometry/vector.ts';
import { mapKeeping } from '../job/map-keeping.ts';
import type { Scan, ScanPair } from '../job/kinds/scan.ts';
import type { ScanId } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import { nextId } from './ids.ts';
import { appendRecord, changeRecord, takeOut, updateRecord, withRecords, type Fields } from './records.ts';

/** mm. What a hand-held scanner, or a telephone with one, is off by over a car. */
export const FIRST_SCAN_ACCURACY = 3;

export const addScan = (job: Job, scan: Omit<Scan, 'id'>): Job =>
  appendRecord(job, 'scans', { id: nextId(job, 'scans'), ...scan });

export const updateScan = (job: Job, id: ScanId, fields: Fields<'scans'>): Job =>
  updateRecord(job, 'scans', id, fields);

/** Another file in its place, whatever it is and however much of it was taken. */
export const anotherFile = (
  job: Job,
  id: ScanId,
  file: Pick<Scan, 'data' | 'file' | 'kind' | 'count' | 'every'>,
): Job =>
  changeRecord(job, 'scans', id, (scan) => {
    const { every: _, ...rest } = scan;
    return { ...rest, ...file };
  });

/** A point has one place on a scan: another takes the place of the one before it. */
export const pairOnScan = (job: Job, id: ScanId, pair: ScanPair): Job =>
  changeRecord(job, 'scans', id, (scan) => ({
    ...scan,
    pairs: [...scan.pairs.filter(({ point }) => point !== pair.point), pair],
  }));

export const unpairOnScan = (job: Job, id: ScanId, point: ScanPair['point']): Job =>
  changeRecord(job, 'scans', id, (scan) => {
    const pairs = scan.pairs.filter((pair) => pair.point !== point);
    return pairs.length === scan.pairs.length ? scan : { ...scan, pairs };
  });

/** The place where the scan says that it is, with what the scan is off by. */
export function addPointFromScan(job: Job, id: ScanId, name: string, position: Vec3): Job {
  const scan = job.scans.find((each) => each.id === id);
  if (scan === undefined) return job;
  const { accuracy } = scan;
  return appendRecord(job, 'points', { id: nextId(job, 'points'), name, accuracy, position, from: { scan: id } });
}

/** The points that were picked on it stay, as accurate as they are; that they are from it goes with it. */
export function removeScan(job: Job, id: ScanId): Job {
  const points = mapKeeping(job.points, (point) => {
    if (point.from?.scan !== id) return point;
    const { from: _, ...rest } = point;
    return rest;
  });
  return takeOut(withRecords(job, 'points', points), 'scans', new Set([id]));
}
