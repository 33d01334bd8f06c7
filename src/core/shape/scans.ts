/** A scan laid by its pairs, whenever these change: from three on, not in a line, it lies as they say; before that it stays where it is. */
import { distance } from '../geometry/vector.ts';
import type { Scan, ScanPair } from '../job/kinds/scan.ts';
import type { ScanId } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import { pairOnScan, unpairOnScan, updateScan } from '../edit/scans.ts';
import { align, type GivenPair } from '../scan/align.ts';
import { inCar, placingOf } from '../scan/place.ts';
import { placeOfPoint } from '../survey/measured-points.ts';

/** The scan's pairs, each with the place of its point in the car. */
export const pairsInCar = (job: Job, scan: Scan): readonly GivenPair[] =>
  scan.pairs.flatMap(({ at, point }) => {
    const goal = placeOfPoint(job, point);
    return goal === null ? [] : [{ at, goal }];
  });

/** The same job where the pairs do not say how the scan lies, or there is no such scan. */
export function laidByPairs(job: Job, id: ScanId): Job {
  const scan = job.scans.find((each) => each.id === id);
  if (scan === undefined) return job;
  const laid = align(scan, pairsInCar(job, scan));
  return laid.ok ? updateScan(job, id, { placement: laid.placement }) : job;
}

/** mm. Laid again by the same places it comes to lie where it was, but for rounding and what a survey is iterated to. */
const STAYS = 1e-3;

/** Whether its pairs would lay it elsewhere than it lies: their points were measured again, or it was moved. */
export function liesOffPairs(job: Job, scan: Scan): boolean {
  const pairs = pairsInCar(job, scan);
  const laid = align(scan, pairs);
  if (!laid.ok) return false;
  const [is, would] = [placingOf(scan), placingOf({ ...scan, placement: laid.placement })];
  return pairs.some(({ at }) => distance(inCar(is, at), inCar(would, at)) > STAYS);
}

/** With one pair more, or another place for a point that had one. */
export const withPair = (job: Job, id: ScanId, pair: ScanPair): Job => laidByPairs(pairOnScan(job, id, pair), id);

/** Without it. */
export const withoutPair = (job: Job, id: ScanId, point: ScanPair['point']): Job =>
  laidByPairs(unpairOnScan(job, id, point), id);
