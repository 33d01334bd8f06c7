/** A corner put into a member where a person looks at it: in line at first, so that nothing moves until its node does. */
import { appendRecord, changeRecord, findRecord, type Edited } from '../edit/records.ts';
import { nextId } from '../edit/ids.ts';
import { insertPathNode, withDie } from '../edit/members.ts';
import { bendRunOf } from '../edit/pieces.ts';
import { fault } from '../job/fault.ts';
import type { MemberId } from '../job/reference.ts';
import { shownName } from '../job/shown.ts';
import type { Job } from '../job/types.ts';
import type { Frame } from '../solve/types.ts';
import { onStraight } from './on-straight.ts';

/**
 * The job with a node in the member's path `along` mm from end A's node along its centreline, the last of the nodes. A member without a die gets the
 * first that fits its tube, since the corner will want one. Refused, in words, while one of its tubes has a bend run, off the straights and where the path has a node already.
 */
export function insertBend(job: Job, frame: Frame, id: MemberId, along: number): Edited {
  const [member, bar] = [findRecord(job, 'members', id), frame.bars.get(id)];
  if (member === undefined || bar === undefined) return job;
  const run = bendRunOf(job, member);
  if (run !== null) return [run];
  const spot = onStraight(bar, along);
  if (!('leg' in spot)) return [spot];
  if (spot.at === null) return [fault('', 'the path has a node there already: move that one')];
  const node = { id: nextId(job, 'nodes'), name: shownName(`${member.name}, new corner`), at: spot.at };
  const cornered = insertPathNode(appendRecord(job, 'nodes', node), id, spot.leg + 1, node.id);
  return changeRecord(cornered, 'members', id, (each) => withDie(job, each));
}
