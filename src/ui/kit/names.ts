/** What a person may choose among: the things of a job, and their mirror images. */
import { PAIR_NEAR } from '../../core/geometry/tolerance.ts';
import { shownName } from '../../core/job/shown.ts';
import { measuredPoints } from '../../core/survey/measured-points.ts';
import type { Surveyed } from '../../core/survey/network.ts';
import { pairsOfPoints } from '../../core/survey/point-pairs.ts';

/** Every reference that may be made to these records: each, and its mirror image. */
export const withImages = (records: readonly { id: string; name: string }[]): { value: string; label: string }[] =>
  records.flatMap((record) => {
    const name = shownName(record.name) || record.id;
    return [
      { value: record.id, label: name },
      { value: `${record.id}'`, label: `${name}, mirrored` },
    ];
  });

/**
 * Where something was measured: each point once. A mirror image is a place of its own only where nobody measured that side; of two that are a pair the image of
 * the one is the other. What is chosen already stays among them.
 */
export function measuredPlaces(job: Surveyed, chosen: string | undefined): { value: string; label: string }[] {
  const points = measuredPoints(job);
  const { of } = pairsOfPoints(points);
  const own = new Set(
    points.filter(({ id, position }) => 2 * Math.abs(position[1]) <= PAIR_NEAR || of.has(id)).map(({ id }) => `${id}'`),
  );
  return withImages(points).filter(({ value }) => value === chosen || !own.has(value));
}
