/**
 * A bar in pieces made two members where another runs through, both ending on that one's axis. Drawn as one the pieces lie on the bar's own line, and
 * where that passes the axis at a distance a strip of wall stays; drawn as two each part runs to the axis, wherever that comes to stand.
 */
import { setPlace } from '../edit/nodes.ts';
import { findRecord, type Edited } from '../edit/records.ts';
import { nearestToPath } from '../geometry/nearest-paths.ts';
import { fault } from '../job/fault.ts';
import { bareId, type MemberId, type TubeRef } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import type { Frame } from '../solve/types.ts';
import { splitMember } from './split.ts';

/**
 * The job with the member split where `by` (as the member sees it) cuts it, the new node on that bar, where it passes the member's line nearest. Refused, in words, where
 * the member cannot be split there, and where its path has a node there already: that one is somebody's own. Both paths in mm.
 */
export function splitOnto(job: Job, frame: Frame, id: MemberId, by: TubeRef): Edited {
  const [bar, through] = [frame.bars.get(id), frame.bars.get(by)];
  if (bar === undefined || through === undefined) return job;
  const split = splitMember(job, frame, id, nearestToPath(bar.path, through.path).at);
  if (Array.isArray(split)) return split;
  const parted = split as Job;
  const place = parted.members.findIndex((member) => member.id === id);
  const node = parted.members[place]!.path.at(-1)!;
  if (findRecord(job, 'nodes', node) !== undefined) {
    return [fault('', 'the bar has a node there: place that on the axis instead')];
  }
  const distance = nearestToPath(through.path, bar.path).at;
  return setPlace(parted, bareId(node), { kind: 'on', member: by, from: 'start', distance, offset: [0, 0, 0] });
}
