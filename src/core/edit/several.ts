/** Edits of several records at once: one step for all, and what holds for one holds for each. */
import { add, equal, ORIGIN, type Vec3 } from '../geometry/vector.ts';
import { mapKeeping } from '../job/map-keeping.ts';
import type { Job } from '../job/types.ts';
import { isMeasured } from '../survey/network.ts';
import { dropFeeds } from './feeds.ts';
import { withoutHolds } from './holds.ts';
import { notFromScan } from './points.ts';
import { tubesNamed } from './members.ts';
import { withRecords, type Edited } from './records.ts';
import { removeAllUnused } from './references.ts';

/** The points, each moved by so much, mm in car axes; what is placed from them follows. Those whose place comes of measurements stay. */
export function movePoints(job: Job, ids: ReadonlySet<string>, by: Vec3): Job {
  const points = mapKeeping(job.points, (point) =>
    ids.has(point.id) && !isMeasured(point) && !equal(by, ORIGIN)
      ? { ...notFromScan(point), position: add(point.position, by) }
      : point,
  );
  return withRecords(job, 'points', points);
}

/** The nodes at fixed places, each moved by so much, mm in car axes. One that is placed from something else stays where that puts it. */
export function moveFixedNodes(job: Job, ids: ReadonlySet<string>, by: Vec3): Job {
  const nodes = mapKeeping(job.nodes, (node) =>
    ids.has(node.id) && node.at.kind === 'fixed'
      ? { ...node, at: { ...node.at, position: add(node.at.position, by) } }
      : node,
  );
  return withRecords(job, 'nodes', nodes);
}

/** Refused while others than these refer to one of them. How the tubes of a member are fed goes with it. */
export function removeSeveral(job: Job, list: 'points' | 'nodes' | 'members', ids: readonly string[]): Edited {
  const made = list === 'members' ? ids.flatMap((id) => tubesNamed(job, id)) : [];
  const going = new Set(ids);
  const without = list === 'points' ? withoutHolds(job, going) : dropFeeds(job, made);
  return removeAllUnused(without, { [list]: going });
}
